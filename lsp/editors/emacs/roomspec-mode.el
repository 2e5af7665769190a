;;; roomspec-mode.el --- Room files: rooms lined with panels  -*- lexical-binding: t -*-

;; Version: 0.1.0
;; Package-Requires: ((emacs "28.1"))
;; Keywords: languages, tools

;;; Commentary:

;; A mode for files that end in .room.  What is wrong, how to mend it, names, figures and the one
;; format come from `roomspec serve' through eglot: M-x eglot, or hook `eglot-ensure' to this mode.

;;; Code:

(require 'roomspec-words)

(defvar eglot-server-programs)

(defgroup roomspec nil
  "Room files."
  :group 'languages)

(defcustom roomspec-command '("roomspec" "serve")
  "How the language server is started."
  :type '(repeat string))

(defvar roomspec-mode-syntax-table
  (let ((table (make-syntax-table)))
    (modify-syntax-entry ?# "<" table)
    (modify-syntax-entry ?\n ">" table)
    (dolist (sign '(?\\ ?'))
      (modify-syntax-entry sign "." table))
    (dolist (sign '(?- ?. ?_ ?/ ?²) table)
      (modify-syntax-entry sign "_" table)))
  "Names hold dashes and dots, units hold strokes.")

(defconst roomspec--propertize
  (syntax-propertize-rules
   ("#.*\\|[0-9½¼¾⅓⅔⅛⅜⅝⅞]\\(\"\\)\\|\"[^\"\n]*\"\\|\\(\"\\)[^\"\n]*\\(\n\\)"
    (1 ".") (2 "|") (3 "|")))
  "After a number a quotation mark means inches; an open text ends with its line.")

(defconst roomspec--heading
  (concat "^[ \t]*" (regexp-opt (append roomspec-headings roomspec-parts) t)
          "[ \t]+\\([^ \t\n#\",]+\\)")
  "A heading and its name.")

(defconst roomspec--number "\\_<[-+]?[0-9½¼¾⅓⅔⅛⅜⅝⅞]+\\(?:[-.,/][0-9]+\\)*[½¼¾⅓⅔⅛⅜⅝⅞]?"
  "A number or a date.")

(defconst roomspec--unit
  (concat "[ \t]*\\(?:[%°\"″”'′’]\\|" (regexp-opt roomspec-units) "\\_>\\)")
  "A unit after a number.")

(defconst roomspec-font-lock-keywords
  `(("\\_<\\(?:as\\|to\\)\\_>" . font-lock-keyword-face)
    (,roomspec--heading (1 font-lock-keyword-face) (2 font-lock-function-name-face))
    ("^[ \t]*rooms[ \t]"
     ("[^ \t\n#\",]+" (save-excursion (re-search-forward "\\_<as\\_>" (line-end-position) t)) nil
      (0 font-lock-function-name-face)))
    (roomspec--next-amount . font-lock-constant-face)
    (,(regexp-opt roomspec-keywords 'symbols) . font-lock-keyword-face))
  "Colours by the look of the words.")

(defun roomspec--next-amount (limit)
  "Find the next number before LIMIT, with its unit."
  (when (re-search-forward roomspec--number limit t)
    (let ((start (match-beginning 0)))
      (when (looking-at roomspec--unit)
        (goto-char (match-end 0)))
      (set-match-data (list start (point)))
      t)))

(defun roomspec--begins-p (words)
  "Whether the line begins with one of WORDS."
  (save-excursion
    (back-to-indentation)
    (looking-at-p (regexp-opt words 'symbols))))

(defun roomspec-depth ()
  "How far in the line belongs: by its first word, else under its heading."
  (cond
   ((roomspec--begins-p roomspec-headings) 0)
   ((roomspec--begins-p roomspec-parts) 2)
   (t (save-excursion
        (forward-line 0)
        (cond
         ((not (re-search-backward roomspec--heading nil t)) 0)
         ((roomspec--begins-p roomspec-parts) 4)
         (t 2))))))

(defun roomspec-indent-line ()
  "Put the line under its heading."
  (let ((depth (roomspec-depth)))
    (if (<= (current-column) (current-indentation))
        (indent-line-to depth)
      (save-excursion (indent-line-to depth)))))

;;;###autoload
(define-derived-mode roomspec-mode prog-mode "Room"
  "Major mode for room files."
  (setq-local comment-start "# ")
  (setq-local comment-start-skip "#+[ \t]*")
  (setq-local indent-tabs-mode nil)
  (setq-local indent-line-function #'roomspec-indent-line)
  (setq-local syntax-propertize-function roomspec--propertize)
  (setq-local font-lock-defaults '(roomspec-font-lock-keywords)))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.room\\'" . roomspec-mode))

(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs (cons 'roomspec-mode (lambda (&rest _) roomspec-command))))

(provide 'roomspec-mode)
;;; roomspec-mode.el ends here
