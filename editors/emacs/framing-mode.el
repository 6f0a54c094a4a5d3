;;; framing-mode.el --- Major mode for the framing of a house  -*- lexical-binding: t; -*-

;; Author: The Storyrod contributors
;; Version: 0.1.0
;; Package-Requires: ((emacs "28.1"))
;; Keywords: languages
;; SPDX-License-Identifier: Apache-2.0 OR MIT

;;; Commentary:

;; A major mode for `*.framing' files: colours, indentation, imenu,
;; folding by outline and hideshow, motion by element, and what
;; `compile' needs to jump to the findings of `storyrod lint'.
;; What knows the house comes from the language server: see
;; storyrod.el.

;;; Code:

(require 'compile)
(require 'framing-syntax)
(require 'framing-font-lock)

(defgroup framing nil
  "The framing of a house as text."
  :group 'languages)

(defcustom framing-program "storyrod"
  "The program that checks, formats and serves."
  :type 'string
  :group 'framing)

(defcustom framing-indent-offset 2
  "How far a fact stands to the right of its element.
The format's one style has two columns."
  :type 'natnum
  :safe #'natnump
  :group 'framing)

;;; Indentation

(defun framing--indentation ()
  "Return the column at which this line should begin."
  (save-excursion
    (back-to-indentation)
    (cond
     ((looking-at-p "$")
      ;; A fact goes on below an element or a fact; a blank line ends them for the writer.
      (if (and (zerop (forward-line -1)) (looking-at-p "[^ \t\n-]\\|[ \t]+[^ \t\n-]"))
          framing-indent-offset
        0))
     ((bolp)
      (if (and (framing-looking-at-fact-p) (not (framing-looking-at-element-p)))
          framing-indent-offset
        0))
     ;; What opens an element and is no fact here was typed behind the indentation of the line before.
     ((and (framing-looking-at-element-p) (not (framing-looking-at-fact-p))) 0)
     (t framing-indent-offset))))

(defun framing-indent-line ()
  "Indent a fact by `framing-indent-offset', an element not at all.
Some words open an element and a fact too: again, this command
puts the line to the other place."
  (interactive)
  (let* ((again (and (eq this-command last-command) (eq this-command 'indent-for-tab-command)))
         (column (if again
                     (if (zerop (current-indentation)) framing-indent-offset 0)
                   (framing--indentation)))
         (behind (- (current-column) (current-indentation))))
    (indent-line-to column)
    (when (> behind 0)
      (move-to-column (+ column behind)))))

;;; Imenu

(defun framing--imenu-index ()
  "Return the elements of the buffer by kind, for imenu."
  (let (index)
    (dolist (element (framing-elements))
      (let* ((kind (car element))
             (group (assoc kind index)))
        (unless group
          (setq group (list kind))
          (push group index))
        (push (cons (framing-element-label element) (nth 3 element)) (cdr group))))
    (dolist (group index)
      (setcdr group (nreverse (cdr group))))
    (nreverse index)))

;;; Compilation

(defconst framing--compilation-rule
  '(storyrod
    "^\\([^\n:]+\\(?::[^\n0-9 :][^\n:]*\\)?\\):\\([0-9]+\\):\\([0-9]+\\): \\(?:error\\|\\(warning\\)\\|\\(advice\\)\\): "
    1 2 3 (4 . 5))
  "What a line of `storyrod lint --format lines' looks like.")

(add-to-list 'compilation-error-regexp-alist-alist framing--compilation-rule)
(add-to-list 'compilation-error-regexp-alist 'storyrod)

;;; The mode

(defvar framing-mode-map
  (let ((map (make-sparse-keymap)))
    (define-key map (kbd "C-c C-c") #'compile)
    map)
  "Keys of `framing-mode'.")

(define-derived-mode framing-base-mode prog-mode "Framing"
  "What the modes for the framing of a house have in common."
  :syntax-table framing-syntax-table
  (setq-local comment-start "-- ")
  (setq-local comment-end "")
  (setq-local comment-start-skip "--+[ \t]*")
  (setq-local comment-column 42)
  (setq-local indent-tabs-mode nil)
  (setq-local indent-line-function #'framing-indent-line)
  (setq-local syntax-propertize-function #'framing-syntax-propertize)
  (setq-local parse-sexp-lookup-properties t)
  (setq-local beginning-of-defun-function #'framing-beginning-of-element)
  (setq-local end-of-defun-function #'framing-end-of-element)
  (setq-local imenu-create-index-function #'framing--imenu-index)
  (setq-local outline-regexp framing-outline-regexp)
  (setq-local outline-level #'framing-outline-level)
  (setq-local compile-command
              (concat (shell-quote-argument framing-program) " lint --format lines")))

;;;###autoload
(define-derived-mode framing-mode framing-base-mode "Framing"
  "Major mode for `*.framing' files: the framing of a house.

An element begins in the first column, its facts are indented
below it, one a line.  A `\"' opens text only behind a blank; behind
a number it means inches.

\\{framing-mode-map}"
  (setq-local font-lock-defaults '(framing-font-lock-keywords)))

(defvar hs-special-modes-alist)
(dolist (mode '(framing-mode framing-ts-mode))
  (add-to-list 'hs-special-modes-alist
               (list mode framing-element-regexp "" "--" #'framing-forward-element)))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.framing\\'" . framing-mode))

(provide 'framing-mode)
;;; framing-mode.el ends here
