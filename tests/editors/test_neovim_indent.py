"""What is written by hand for one editor and must be what the grammar says."""

import re

from corpus_texts import EDITORS

from roomspec.syntax.tables import tables


def test_neovim_indents_after_every_heading():
    """The words in its table are those that open a block or a part of one."""
    text = (EDITORS / "neovim" / "lua" / "roomspec_indent.lua").read_text(encoding="utf-8")
    (words,) = re.findall(r"\[\[(.*?)\]\]", text)
    assert set(words.split()) == {word for heads in tables().heads.values() for word in heads}
