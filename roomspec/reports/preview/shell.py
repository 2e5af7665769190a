"""The page that stays while its pieces change."""

from roomspec.reports.preview.piece import text

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self';"
    " base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
"""What a browser may do for this page: its own script, style and pictures, and nothing else."""

TOLD = '<span class="faint" data-told></span>'
MONEY = (("changes", "Changed since this page was opened"), ("price", "Price"), ("order", "Order"))
"""Pieces that say in a line what they say in full when they are opened."""


def shell(title: str, editor: bool) -> str:
    """The page without its pieces; `editor` where one listens that can show a place."""
    folded = "\n".join(
        f'<details id="{name}" class="folded"><summary><h2>{head}</h2> {TOLD}</summary>'
        '<div class="piece"></div></details>'
        for name, head in MONEY
    )
    return f"""<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{text(title)}: preview</title>
<link rel="stylesheet" href="preview.css">
<link rel="icon" href="data:,">
<script src="preview.js" defer></script>
</head>
<body data-editor="{"yes" if editor else "no"}">
<header>
<h1>{text(title)}</h1>
<p id="state" role="status">Reading ...</p>
<label><input type="checkbox" id="full"> Drawings in full size</label>
</header>
<aside aria-label="Findings and rooms">
<section id="findings"><h2>Findings</h2> {TOLD}<div class="piece"></div></section>
<nav id="contents" aria-label="Rooms"><h2>Rooms</h2> {TOLD}<div class="piece"></div></nav>
</aside>
<main>
{folded}
<div id="rooms"></div>
</main>
<noscript><p>This page shows what changes by a script; without one it stays empty.</p></noscript>
</body>
</html>
"""
