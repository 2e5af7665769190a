"""Emacs as a person has it, in a terminal: typed at there, and asked through its own server."""

import base64
import fcntl
import json
import os
import pty
import shutil
import struct
import subprocess
import tempfile
import termios
import threading
from pathlib import Path
from typing import Any

from real_editor import WAIT, surroundings, until

EARLY = "(setq native-comp-deferred-compilation nil native-comp-jit-compilation nil inhibit-startup-screen t)\n"
"""Nothing is compiled beside the test: that would keep the machine and this job's processes busy."""
LISTEN = """\
(require 'json)
(setq server-socket-dir "{folder}" server-name "at" make-backup-files nil auto-save-default nil)
(server-start)
"""
ASKED = """
(if (active-minibuffer-window) (with-current-buffer (window-buffer (minibuffer-window)) (buffer-string)) "")
"""
"""The question in the minibuffer, and what is answered so far."""


class Emacs:
    """A running Emacs in a terminal of 50 lines; it is typed at there, and asked through its own server."""

    def __init__(self, folder: Path, job: Path, init: str) -> None:
        """Start it in the folder of the job, with an init file."""
        self.job, self.folder = job, folder
        self.environment = surroundings(folder) | {"TERM": "vt100"}
        program = shutil.which("emacs", path=self.environment["PATH"])
        assert program, "Emacs is not installed: apt install emacs-nox elpa-eglot"
        self.address = str(Path(tempfile.mkdtemp(prefix="emacs")) / "at")
        place = folder / "home" / ".emacs.d"
        place.mkdir()
        (place / "early-init.el").write_text(EARLY)
        (place / "init.el").write_text(LISTEN.format(folder=Path(self.address).parent) + init)
        self.terminal, inner = pty.openpty()
        fcntl.ioctl(inner, termios.TIOCSWINSZ, struct.pack("HHHH", 50, 150, 0, 0))
        self.screen = bytearray()
        command = [program, f"--terminal={os.ttyname(inner)}"]
        self.process = subprocess.Popen(
            command, cwd=job, env=self.environment, stdin=inner, stdout=inner, stderr=inner, start_new_session=True
        )
        os.close(inner)
        threading.Thread(target=self._watch, daemon=True).start()

    def ready(self) -> None:
        """Wait until it listens."""
        until(Path(self.address).exists, self.said)

    def _watch(self) -> None:
        try:
            while shown := os.read(self.terminal, 65536):
                self.screen += shown
        except OSError:
            return

    def lisp(self, code: str) -> Any:
        """What a form gives in the buffer that is shown."""
        asked = f"""
            (with-current-buffer (window-buffer (if (minibufferp (window-buffer))
                                                    (minibuffer-selected-window) (selected-window)))
              (base64-encode-string (encode-coding-string (json-encode {code}) 'utf-8) t))
        """
        command = ["emacsclient", "--socket-name", self.address, "--eval", asked]
        run = subprocess.run(command, env=self.environment, capture_output=True, text=True, timeout=WAIT, check=False)
        assert run.returncode == 0, f"{code}: {run.stdout}{run.stderr}"
        return json.loads(base64.b64decode(run.stdout.strip().strip('"')))

    def keys(self, typed: str) -> None:
        """Type; control characters and escapes as a terminal sends them."""
        os.write(self.terminal, typed.encode())

    def command(self, name: str, *answers: str) -> None:
        """Call a command by its name, and answer what it asks, each question once it is asked."""
        self.keys(f"\x1bx{name}\r")
        for question, answer in zip(answers[::2], answers[1::2], strict=True):
            until(lambda question=question: question in self.lisp(ASKED), self.said)
            self.keys(answer)

    def open(self, name: str) -> None:
        """Visit a file of the job; gives back when the server has it."""
        self.keys(f"\x18\x06{self.job / name}\r")
        until(lambda: self.lisp("buffer-file-name") == str(self.job / name), self.said)
        self.wait("(and (eglot-managed-p) t)")

    def wait(self, code: str) -> Any:
        """What a form gives once that is true."""
        return until(lambda: self.lisp(code), self.said)

    def text(self) -> str:
        """The buffer."""
        return str(self.lisp("(buffer-substring-no-properties (point-min) (point-max))"))

    def at(self, line: str, word: str = "") -> None:
        """Put the cursor on a word of the first such line."""
        before = self.text()
        place = f"\n{before}".index(f"\n{line}\n") + line.index(word) + 1
        self.lisp(f"(progn (goto-char {place}) (set-window-point (selected-window) {place}))")

    def found(self, name: str) -> list[list[str]]:
        """What is shown as found in a file that is open: the line, the words that are underlined, the check."""
        shown: list[list[str]] = self.lisp(f"""
            (with-current-buffer (find-buffer-visiting {json.dumps(str(self.job / name), ensure_ascii=False)})
              (vconcat (mapcar
                (lambda (one)
                  (save-excursion
                    (goto-char (flymake-diagnostic-beg one))
                    (vector (buffer-substring-no-properties (line-beginning-position) (line-end-position))
                            (buffer-substring-no-properties (flymake-diagnostic-beg one) (flymake-diagnostic-end one))
                            (plist-get (cdr (assq 'eglot-lsp-diag (flymake-diagnostic-data one))) :code))))
                (seq-sort-by #'flymake-diagnostic-beg #'< (flymake-diagnostics)))))
        """)
        return shown

    def listed(self, name: str) -> list[list[Any]]:
        """What is listed as found in a file that is not open: line, column, text.

        The eglot of Debian 12 leaves the bytes of a file's name as they are.
        """
        shown: dict[str, list[list[Any]]] = self.lisp("""
            (mapcar
              (lambda (file)
                (cons (decode-coding-string (encode-coding-string (car file) 'raw-text) 'utf-8)
                      (vconcat (mapcar
                        (lambda (one)
                          (pcase-let ((`(,line . ,column) (flymake-diagnostic-beg one)))
                            (vector line column (flymake-diagnostic-text one))))
                        (cdr file)))))
              flymake-list-only-diagnostics)
        """)
        return (shown or {}).get(str(self.job / name), [])

    def sees(self, name: str, *wanted: tuple[str, str, str]) -> None:
        """Wait until that is what is found in an open file."""
        due = [list(one) for one in wanted]
        until(lambda: self.found(name) == due, lambda: f"found: {self.found(name)}\n{self.said()}")

    def said(self) -> str:
        """The end of what Emacs, the protocol's log and the server's standard error hold."""
        ask = """
            (mapconcat (lambda (buffer)
                (with-current-buffer buffer
                  (format "-- %s\\n%s" (buffer-name)
                          (buffer-substring-no-properties (max (point-min) (- (point-max) 3000)) (point-max)))))
              (seq-filter (lambda (one) (string-match-p "EGLOT\\\\|Messages\\\\|Warnings" (buffer-name one)))
                          (buffer-list))
              "\\n")
        """
        try:
            return str(self.lisp(ask))
        except (AssertionError, OSError, ValueError, subprocess.SubprocessError) as trouble:
            return f"-- screen\n{bytes(self.screen[-3000:]).decode(errors='replace')}\n{trouble}"
