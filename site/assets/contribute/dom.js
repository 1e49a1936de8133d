/* Elements made in one line; text is always text, never markup. */
(function (W) {
  "use strict";

  function el(tag, attributes, ...children) {
    const made = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes || {})) {
      if (value === true) made.setAttribute(name, ""); else if (value !== false && value !== null && value !== undefined) made.setAttribute(name, value);
    }
    made.append(...children.filter(each => each !== null && each !== undefined));
    return made;
  }

  Object.assign(W, { el });
})(self.WetmountContribute = self.WetmountContribute || {});
