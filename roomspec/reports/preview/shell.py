"""The page that stays while its pieces change."""

from roomspec.reports.markup import marked_up
from roomspec.reports.width import shown

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self';"
    " base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
"""What a browser may do for this page: its own script, style and pictures, and nothing else."""


def shell(title: str, editor: bool) -> str:
    """The page without its pieces; `editor` where one listens that can show a place."""
    told = marked_up(shown(title))
    return f"""<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{told}: preview</title>
<link rel="stylesheet" href="preview.css">
<link rel="icon" href="data:,">
<script src="preview.js" defer></script>
</head>
<body data-editor="{"yes" if editor else "no"}">
<header>
<h1>{told}</h1>
<p id="state" role="status">Reading ...</p>
</header>
<nav aria-label="Parts"><ul>
<li><a href="#findings">Findings</a></li>
<li><a href="#changes">Changes</a></li>
<li><a href="#price">Price</a></li>
<li><a href="#order">Order</a></li>
<li><a href="#rooms">Rooms</a></li>
</ul></nav>
<main>
<section id="findings"></section>
<section id="changes"></section>
<section id="price"></section>
<section id="order"></section>
<div id="rooms"></div>
</main>
<noscript><p>This page shows what changes by a script; without one it stays empty.</p></noscript>
</body>
</html>
"""
