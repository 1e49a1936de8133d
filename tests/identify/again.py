"""A key of the mini library that asks the same characters several times, in couplets of one and of two characters.

Not every button says how its rim is, and no lead of "count" is for a thing without holes: what an
entry does not say, and what no lead stands for, are walked too.
"""

from pathlib import Path

KEY = """\
id: again
title: Buttons, asked again
about: Names a button that is looked at more than once.
scope: [button]
magnification: 40
first: through
couplets:
  through:
    asks: Can light be seen through it?
    leads:
      closed: {text: No hole, when: {holes: [none]}, couplet: thick}
      open: {text: Holes, when: {holes: [two, four]}, couplet: small}
  thick:
    asks: How wide is it, without holes?
    leads:
      narrow: {text: Narrow, when: {width: {below: narrow-button}}, end: shank-button}
      middling: {text: Between, when: {width: {from: narrow-button, below: wide-button}}, couplet: edge}
      wide: {text: Wide, when: {width: {from: wide-button}}, end: shank-button}
  small:
    asks: Is it small, with four holes?
    leads:
      small: {text: Small with four holes, when: {holes: [four], width: {below: narrow-button}}, couplet: edge}
      other: {text: Not both, otherwise: true, couplet: count}
  count:
    asks: How many holes?
    leads:
      two: {text: Two, when: {holes: [two]}, couplet: size}
      four: {text: Four, when: {holes: [four]}, couplet: size}
  size:
    asks: Is it wide?
    leads:
      wide: {text: Wide, when: {width: {from: wide-button}}, end: coat-button}
      narrow: {text: Narrow, when: {width: {below: wide-button}}, couplet: edge}
  edge:
    asks: Does the edge stand up, and does it shine?
    leads:
      raised: {text: Raised and dull, when: {rim: [raised], light: [dull]}, couplet: rim}
      other: {text: Not both, otherwise: true, couplet: rim}
  rim:
    asks: Does the edge stand up?
    leads:
      raised: {text: Raised, when: {rim: [raised]}, end: shirt-button}
      flat: {text: Flat, when: {rim: [flat]}, end: cuff-button}
"""


def put_again(root: Path) -> Path:
    """Puts the key into a copy of the mini library, and takes what the shank button says of its rim out; gives the copy back."""
    (root / "keydata/keys/again.yaml").write_text(KEY, "utf-8")
    entry = root / "keydata/entries/debris/shank-button.yaml"
    entry.write_text("".join(line for line in entry.read_text("utf-8").splitlines(keepends=True) if "  rim:" not in line), "utf-8")
    return root
