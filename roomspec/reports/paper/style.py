"""How a page looks: on a screen by day and by night, and on A4."""

STYLE = """\
:root {
  color-scheme: light dark;
  --paper: #fff; --ink: #1a1a1a; --faint: #595959; --line: #b8b8b8; --shade: #f1f1ee; --loud: #a30d00; --link: #0b4f8a;
}
@media (prefers-color-scheme: dark) {
  :root {
    --paper: #16181a; --ink: #ececea; --faint: #b3b3ae; --line: #55585b; --shade: #24272a; --loud: #ff9d90;
    --link: #9cc9f5;
  }
}
* { box-sizing: border-box; }
html { background: var(--paper); color: var(--ink); }
body {
  font: 1rem/1.45 "Helvetica Neue", Arial, "Liberation Sans", sans-serif;
  margin: 0 auto; max-width: 62rem; padding: 1.5rem 1rem 4rem;
}
h1, h2, h3, p, caption, figcaption, dd, li { overflow-wrap: anywhere; }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 .2rem; }
h2 { border-top: 2px solid var(--ink); font-size: 1.25rem; margin: 2.2rem 0 .6rem; padding-top: .4rem; }
h3 { font-size: 1.05rem; margin: 1.4rem 0 .4rem; }
p, ul, ol, dl { margin: .5rem 0; max-width: 46rem; }
.of { font-size: 1.1rem; margin-bottom: 1rem; }
.stamp {
  border: 2px solid var(--loud); color: var(--loud); font-weight: bold; letter-spacing: .06em; padding: .3rem .6rem;
  position: sticky; top: 0; background: var(--paper); z-index: 1;
}
.loud { color: var(--loud); font-weight: bold; }
dl { display: grid; gap: .15rem 1rem; grid-template-columns: max-content 1fr; }
dt { color: var(--faint); }
dd { margin: 0; }
li { margin: .25rem 0; }
a { color: var(--link); }
a:focus-visible, .wide:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
.wide { margin: .6rem 0; overflow-x: auto; }
table { border-collapse: collapse; font-variant-numeric: tabular-nums; min-width: 50%; }
caption { font-weight: bold; padding: .2rem 0; text-align: left; }
th, td { border-bottom: 1px solid var(--line); padding: .25rem .6rem; text-align: left; vertical-align: top; }
th:first-child, td:first-child { padding-left: 0; }
thead th { border-bottom: 2px solid var(--ink); vertical-align: bottom; }
tbody th, tfoot th { font-weight: normal; }
tbody th[colspan] { background: var(--shade); font-weight: bold; padding: .35rem .4rem; }
tfoot th, tfoot td { border-bottom: 0; border-top: 2px solid var(--ink); font-weight: bold; }
tfoot tr + tr > * { border-top: 0; font-weight: normal; }
.r { text-align: right; white-space: nowrap; }
table:has(.w) { width: 100%; }
.w { min-width: 7rem; width: 20%; }
td.w { height: 2.4em; }
.tick { list-style: none; padding: 0; }
.tick > li { padding-left: 1.9rem; position: relative; }
.tick > li::before {
  border: 1.5px solid var(--ink); content: ""; height: 1rem; left: 0; position: absolute; top: .15rem; width: 1rem;
}
figure { margin: .8rem 0; }
figure img { background: #fff; display: block; height: auto; max-width: 100%; }
figcaption { color: var(--faint); font-size: .9rem; }
@media print {
  :root {
    color-scheme: light;
    --paper: #fff; --ink: #000; --faint: #333; --line: #999; --shade: #eee; --loud: #000; --link: #000;
  }
  html { font-size: 9.5pt; }
  body { max-width: none; padding: 0; }
  th, td { padding: 1.3pt 5pt; }
  h2 { margin-top: 14pt; } h3 { margin-top: 9pt; }
  li { margin: 1.5pt 0; }
  h1 { font-size: 17pt; } h2 { font-size: 13pt; } h3 { font-size: 10.5pt; } .of { font-size: 11pt; }
  h1, h2, h3, caption { break-after: avoid; }
  tr, figure, li { break-inside: avoid; }
  tr:has(th[colspan]) { break-after: avoid; }
  thead { display: table-header-group; } tfoot { display: table-row-group; }
  .new-page { break-before: page; }
  .new-page > h2 { margin-top: 0; }
  .wide { overflow: visible; }
  nav { display: none; }
  .stamp { position: static; }
  .a4 { page: drawing-a4; } .a3 { page: drawing-a3; }
  .a4, .a3 { break-before: page; break-after: page; margin: 0; }
  .a4 img { height: 209.5mm; width: 297mm; } .a3 img { height: 296.5mm; width: 420mm; }
  .a4 img, .a3 img { max-width: none; }
  .a4 figcaption, .a3 figcaption { display: none; }
  .first { position: relative; } .first figure { margin: 0; }
  .first > h2, .first > h3, .first > p { border: 0; margin: 0; padding: 0; position: absolute; top: 4mm; }
  .first > h2, .first > h3 { font-size: 10pt; left: 20mm; }
  .first > p { font-size: 7.5pt; left: 45mm; line-height: 13pt; }
  .on-every-page {
    display: block; position: fixed; left: 0; right: 0; top: 40%; text-align: center; transform: rotate(-30deg);
    font-size: 56pt; font-weight: bold; color: rgb(0 0 0 / .16); z-index: 2;
  }
}
@page drawing-a4 {
  size: A4 landscape; margin: 0;
  @top-center { content: none; } @bottom-left { content: none; } @bottom-right { content: none; }
}
@page drawing-a3 {
  size: A3 landscape; margin: 0;
  @top-center { content: none; } @bottom-left { content: none; } @bottom-right { content: none; }
}
@media not print { .on-every-page { display: none; } }
"""
"""Contrasts are at least 4.5 to 1 for text, in both (WCAG 2.2, 1.4.3)."""


def page_boxes(foot: str, stamp: str) -> str:
    """What stands in the margins of each printed page (CSS Paged Media 3), where the printer's program knows them."""
    above = f"  @top-center {{ content: {_string(stamp)}; font: bold 11pt sans-serif; }}\n" if stamp else ""
    return (
        "@page {\n"
        "  size: A4; margin: 17mm 14mm 16mm;\n"
        f"{above}"
        f"  @bottom-left {{ content: {_string(foot)}; font: 8pt sans-serif; }}\n"
        '  @bottom-right { content: counter(page) " / " counter(pages); font: 8pt sans-serif; white-space: nowrap; }\n'
        "}\n"
    )


def _string(text: str) -> str:
    """A CSS string that no text can leave, nor the element that holds the style."""
    return '"' + "".join(c if c.isalnum() or c in " .,:-()" else f"\\{ord(c):x} " for c in text) + '"'
