/* On the page of an old address: to the new one, with what stands behind the #. */
(function () {
  "use strict";
  location.replace(document.querySelector("link[data-moved]").href + location.hash);
})();
