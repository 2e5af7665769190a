"""The mode of Emacs by itself, without a server: compiled, and its colours. Needs `emacs` on the PATH."""

import json
import shutil
import subprocess
from pathlib import Path

from corpus_texts import EDITORS, ROOT, told
from real_editor import WAIT

from roomspec.syntax.tables import tables


def test_the_mode_compiles_without_a_warning(tmp_path: Path):
    """And what Emacs asks of its documentation is there."""
    files = [shutil.copy(file, tmp_path) for file in sorted((EDITORS / "emacs").glob("*.el"))]
    strict = "(setq byte-compile-error-on-warn t)"
    for look in (
        ["--eval", strict, "-f", "batch-byte-compile", *files],
        [f"--eval=(mapc #'checkdoc-file '{lisp(files)})"],
    ):
        run = subprocess.run(
            ["emacs", "-Q", "--batch", "-L", tmp_path, *look], capture_output=True, text=True, timeout=WAIT, check=False
        )
        assert (run.returncode, run.stdout, run.stderr) == (0, "", "")


def lisp(words: list[str]) -> str:
    """A list of strings."""
    return "(" + " ".join(f'"{word}"' for word in words) + ")"


def test_the_samples_have_the_servers_colours():
    """Keywords, names that headings give, quantities, texts and comments; but a name spelled like a keyword is one."""
    files = sorted((ROOT / "samples").rglob("*.room"))
    code = f"""
        (dolist (file '{lisp([str(file) for file in files])})
          (find-file file)
          (font-lock-ensure)
          (princ (json-encode (vconcat (mapcar
            (lambda (place) (format "%s" (get-text-property place 'face)))
            (number-sequence 1 (1- (point-max)))))))
          (terpri))
    """
    command = [
        "emacs",
        "-Q",
        "--batch",
        "-L",
        str(EDITORS / "emacs"),
        "-l",
        "roomspec-mode",
        "-l",
        "json",
        "--eval",
        code,
    ]
    run = subprocess.run(command, capture_output=True, text=True, timeout=WAIT, check=False)
    assert run.returncode == 0, run.stderr
    for file, line in zip(files, run.stdout.splitlines(), strict=True):
        text = file.read_text(encoding="utf-8")
        assert coloured(text, json.loads(line)) == coloured(text, due(text)), file


KEYWORDS = set(tables().keywords.values())
FACES = {
    "keyword": "font-lock-keyword-face",
    "number": "font-lock-constant-face",
    "string": "font-lock-string-face",
    "comment": "font-lock-comment-face",
}


def due(text: str) -> list[str]:
    """The face that each letter should have by what the server says."""
    faces = []
    for line, words in zip(text.split("\n"), told(text), strict=True):
        row = ["nil"] * (len(line) + 1)
        for start, end_, kind, declares in words:
            looks = "keyword" if kind == "variable" and not declares and line[start:end_] in KEYWORDS else kind
            row[start:end_] = [FACES.get(looks, "font-lock-function-name-face" if declares else "nil")] * (end_ - start)
        faces += row
    return faces[: len(text)]


def coloured(text: str, faces: list[str]) -> list[tuple[str, str]]:
    """Each word of a text with the face of its first letter; the sign before a comment counts as the comment."""
    plain = [face.replace("comment-delimiter", "comment") for face in faces]
    starts = [at for at, letter in enumerate(text) if not letter.isspace() and (not at or text[at - 1].isspace())]
    return [(text[at:].split(maxsplit=1)[0], plain[at]) for at in starts]
