;;; framing-ts-mode.el --- Major mode for the framing of a house, by tree-sitter  -*- lexical-binding: t; -*-

;; Author: The Storyrod contributors
;; SPDX-License-Identifier: Apache-2.0 OR MIT

;;; Commentary:

;; `framing-mode' with colours from the grammar in `grammar/tree-sitter'
;; of the project, for Emacs 29 and later.  It tells a grid line from a
;; number, and marks what can't be read.
;;
;; `treesit-install-language-grammar' builds the grammar once it knows
;; where the project lies:
;;
;;   (add-to-list 'treesit-language-source-alist
;;                '(framing "file:///path/to/storyrod" nil "grammar/tree-sitter/src"))
;;
;; and this opens `*.framing' files by it:
;;
;;   (require 'framing-ts-mode)
;;   (add-to-list 'major-mode-remap-alist '(framing-mode . framing-ts-mode))

;;; Code:

(require 'treesit)
(require 'framing-mode)

(declare-function treesit-node-start "treesit.c" (node))
(declare-function treesit-parser-create "treesit.c" (language &optional buffer no-reuse tag))
(declare-function treesit-ready-p "treesit" (language &optional quiet))

(defvar treesit-thing-settings)

(defface framing-reference '((t :inherit font-lock-type-face))
  "Face of a name where it is used."
  :group 'framing-faces)

(defun framing-ts--fontify-measure (node override start end &rest _)
  "Colour the number of NODE and the unit behind it apart.
OVERRIDE, START and END are what `treesit-font-lock-rules' says."
  (save-excursion
    (goto-char (treesit-node-start node))
    (let ((last (treesit-node-end node)))
      (when (looking-at "EL")
        (goto-char (match-end 0)))
      (skip-chars-forward "^[:alpha:]%" last)
      ;; The power of ten has a letter too.
      (when (looking-at "[eE][-+]?[0-9]+")
        (goto-char (match-end 0))
        (skip-chars-forward " \u00a0" last))
      (let ((unit (if (eq (char-after) ?%) last (point))))
        (skip-chars-backward " \u00a0")
        (treesit-fontify-with-override (treesit-node-start node) (if (= unit last) last (point))
                                       'framing-number override start end)
        (when (< unit last)
          (treesit-fontify-with-override unit last 'framing-unit override start end))))))

(defvar framing-ts--font-lock-settings
  (when (treesit-available-p)
    (treesit-font-lock-rules
     :language 'framing
     :feature 'comment
     '((comment) @font-lock-comment-face)

     :language 'framing
     :feature 'text
     '((text) @font-lock-string-face
       (words) @font-lock-string-face)

     :language 'framing
     :feature 'element
     '((keyword) @framing-element
       (_ keyword: (keyword) name: (name) @framing-name)
       ((claim (link) @framing-element) (:match "\\`should" @framing-element)))

     :language 'framing
     :feature 'fact
     '((phrase) @framing-fact)

     :language 'framing
     :feature 'number
     '((count) @framing-number
       (number) @framing-number
       (date) @framing-number
       (bar) @framing-number
       (nominal) @framing-number
       (percent) @framing-number
       [(length) (elevation) (load_value) (stress) (area_value)] @framing-ts--fontify-measure)

     :language 'framing
     :feature 'choice
     '([(choice) (mark) (side)] @framing-choice
       [(shape) (make) (species) (grade) (rolled)] @framing-stuff)

     :language 'framing
     :feature 'joining
     '([(link) (relation) "x"] @framing-joining
       (operator) @framing-arithmetic)

     :language 'framing
     :feature 'reference
     '((fact (name) @framing-reference)
       (fact_name (name) @framing-reference)
       (section (name) @framing-reference))

     :language 'framing
     :feature 'error
     '((ERROR) @font-lock-warning-face)))
  "Colours of `framing-ts-mode'.")

;;;###autoload
(define-derived-mode framing-ts-mode framing-base-mode "Framing"
  "Major mode for `*.framing' files, by tree-sitter.
Its level 4 of `treesit-font-lock-level' colours names where they
are used, and what can't be read."
  (when (treesit-ready-p 'framing)
    (treesit-parser-create 'framing)
    (setq-local treesit-font-lock-settings framing-ts--font-lock-settings)
    (setq-local treesit-font-lock-feature-list
                '((comment element)
                  (text fact)
                  (number choice joining)
                  (reference error)))
    ;; From Emacs 30 on, a fact is what `forward-sentence' goes over.
    (setq-local treesit-thing-settings
                '((framing (sentence "\\`\\(?:fact\\|claim\\)\\'")
                           (text "\\`comment\\'"))))
    (treesit-major-mode-setup)))

(when (fboundp 'derived-mode-add-parents)
  (derived-mode-add-parents 'framing-ts-mode '(framing-mode)))

(provide 'framing-ts-mode)
;;; framing-ts-mode.el ends here
