;;; framing-font-lock.el --- Colours for the framing format  -*- lexical-binding: t; -*-

;; Author: The Storyrod contributors
;; SPDX-License-Identifier: Apache-2.0 OR MIT

;;; Commentary:

;; A word is coloured where it means something: the phrases of a fact
;; below an element that has it, the choices of a fact behind its phrase.

;;; Code:

(require 'font-lock)
(require 'framing-syntax)

(defgroup framing-faces nil
  "Colours of the framing of a house."
  :group 'faces)

(defface framing-element '((t :inherit font-lock-keyword-face))
  "Face of what opens an element.")

(defface framing-name '((t :inherit font-lock-function-name-face))
  "Face of the name of an element on its first line.")

(defface framing-fact '((t :inherit font-lock-variable-name-face))
  "Face of the words of a fact.")

(defface framing-joining '((t :inherit shadow))
  "Face of what joins the parts of a line.")

(defface framing-arithmetic '((t :inherit framing-choice))
  "Face of what changes the number beside it, such as `less'.")

(defface framing-choice '((t :inherit font-lock-builtin-face))
  "Face of a word of a closed list.")

(defface framing-stuff '((t :inherit framing-choice))
  "Face of what a member is made of.")

(defface framing-number '((t :inherit font-lock-constant-face))
  "Face of numbers, sizes and dates.")

(defface framing-unit '((t :inherit font-lock-type-face))
  "Face of units written in letters.")

;;; Numbers

(defconst framing--number-regexp
  (let* ((plain "[0-9]+\\(?:\\.[0-9]+\\)?")
         (vulgar "[½¼¾⅛⅜⅝⅞]")
         (fraction (concat "\\(?:[0-9]+/[0-9]+\\|" vulgar "\\)"))
         (mixed (concat "\\(?:" fraction "\\|" plain "\\(?:[- ]?" vulgar "\\|[- ]" fraction "\\)?\\)"))
         (inch "\\(?:[\"”″]\\|''\\|’’\\|′′\\)")
         (foot "['’′]")
         (feet (concat plain " ?" foot "\\(?:[- ]?" mixed inch "\\|-?" mixed "\\)?"))
         (length (concat "\\(?:" feet "\\|" mixed inch "?\\)"))
         (size (concat length "\\(?:[xX×]" length "\\)*")))
    (concat "\\(?:^\\|[ \t\u00a0,(=<>≤≥/]\\|\\_<HSS\\)\\("
            "\\(?:EL\\.?[ \t]*\\)?\\(?:-\\|−\\|(-) ?\\|±\\|\\+/-\\|\\+\\)?"
            "\\(?:"
            "[0-9]\\{4\\}-[0-9][0-9]-[0-9][0-9]"
            "\\|[0-9]+-ply"
            "\\|" plain "[eE][-+]?[0-9]+"
            "\\|" plain "%"
            "\\|" size
            "\\)\\|#[0-9]+\\)"))
  "A number in any of its spellings, behind what may stand before it.")

(defconst framing--unit-regexp
  (concat "[ \u00a0]?\\(" (mapconcat #'regexp-quote framing-words-units "\\|") "\\)"
          "\\(?:[^[:alnum:]_/-]\\|$\\)")
  "A unit in letters behind a number.")

(defun framing--match-number (limit)
  "Find a number before LIMIT: group 1 is the number, group 2 its unit."
  (let (found)
    (while (and (not found) (re-search-forward framing--number-regexp limit t))
      (let ((start (match-beginning 1))
            (end (match-end 1)))
        (cond
         ((let ((case-fold-search nil)) (looking-at framing--unit-regexp))
          (goto-char (match-end 1))
          (setq found (list start (point) start end (match-beginning 1) (match-end 1))))
         ;; Letters behind figures make a mark, such as 24F-V4.
         ((looking-at-p "[[:alnum:]_]"))
         (t (setq found (list start end start end))))))
    (when found
      (set-match-data found)
      t)))

;;; Words

(defvar framing--fact nil
  "The plist of the fact that was found last.")

(defun framing--match-fact (limit)
  "Find the phrase of a fact before LIMIT.
Group 1 is the phrase, group 2 the `should be' of a claim."
  (let (found)
    (while (and (not found) (re-search-forward "^[ \t]+\\([^ \t\n]\\)" limit t))
      (goto-char (match-beginning 1))
      (let ((fact (framing-looking-at-fact)))
        (if (not fact)
            (end-of-line)
          (setq framing--fact fact)
          (let ((start (match-beginning 0))
                (end (match-end 0))
                (claim (match-beginning 1)))
            (setq found (if (plist-get fact :claim)
                            (list start end
                                  start (save-excursion (goto-char claim)
                                                        (skip-chars-backward " \t")
                                                        (point))
                                  claim end)
                          (list start end start end)))
            (goto-char end)))))
    (when found
      (set-match-data found)
      t)))

(defvar framing--regexps (make-hash-table :test #'eq)
  "Regexps of phrases, by the list of them.")

(defun framing--search (phrases limit)
  "Search for one of PHRASES, a constant list, before LIMIT."
  (when phrases
    (let ((case-fold-search nil)
          (regexp (or (gethash phrases framing--regexps)
                      (puthash phrases (framing-phrases-regexp phrases) framing--regexps))))
      (re-search-forward regexp limit t))))

(defun framing--match-choice (limit)
  "Find a choice of the last fact before LIMIT."
  (framing--search (plist-get framing--fact :choices) limit))

(defun framing--match-stuff (limit)
  "Find what a member of the last fact is made of before LIMIT."
  (when (plist-get framing--fact :member)
    (or (framing--search framing-words-stuff limit)
        ;; Grades that begin with a figure, such as 24F-V4, and marks of a mill, such as W8x24.
        (re-search-forward
         "\\_<\\(?:[0-9]+[[:alpha:]][[:alnum:].-]*\\|[[:alpha:]]+[0-9.]+[xX×][0-9][[:alnum:].]*\\)\\_>"
         limit t))))

(defun framing--match-named-fact (limit)
  "Find the name of a fact in the last fact before LIMIT."
  (when (plist-get framing--fact :names)
    (framing--search framing-words-names limit)))

(defun framing--match-case (limit)
  "Find a load case in the last fact before LIMIT."
  (when (plist-get framing--fact :names)
    (framing--search framing-words-cases limit)))

(defun framing--match-argument (limit)
  "Find what joins the parts of a comparison in the last fact before LIMIT."
  (when (plist-get framing--fact :names)
    (framing--search framing-words-arguments limit)))

(defun framing--match-own-joining (limit)
  "Find what joins the parts of the last fact before LIMIT."
  (framing--search (plist-get framing--fact :joining) limit))

(defun framing--match-joining (limit)
  "Find what joins the parts of any fact before LIMIT."
  (framing--search framing-words-joining limit))

(defun framing--match-arithmetic (limit)
  "Find what changes a number before LIMIT."
  (framing--search framing-words-arithmetic limit))

(defun framing--behind-phrase ()
  "Go behind the phrase of the fact, where its words begin."
  (goto-char (match-end 0))
  nil)

(defconst framing-font-lock-keywords
  `((,(concat "\\(" framing-element-regexp "\\)\\(?:[ \t]+\\(" framing--name-regexp "\\)\\)?")
     (1 'framing-element)
     (2 'framing-name nil t))
    (,(concat "^" framing-words-include "\\_>") 0 'framing-element)
    (framing--match-number
     (1 'framing-number)
     (2 'framing-unit nil t))
    (framing--match-fact
     (1 'framing-fact)
     (2 'framing-element nil t)
     ,@(mapcar (lambda (rule)
                 `(,(car rule) (framing--behind-phrase) nil (0 ',(cdr rule) keep)))
               '((framing--match-arithmetic . framing-arithmetic)
                 (framing--match-choice . framing-choice)
                 (framing--match-stuff . framing-stuff)
                 (framing--match-own-joining . framing-joining)
                 (framing--match-named-fact . framing-fact)
                 (framing--match-case . framing-choice)
                 (framing--match-argument . framing-joining)
                 (framing--match-joining . framing-joining)))
     ("[<>]?=\\|[<>≤≥]" (framing--behind-phrase) nil (0 'framing-joining))
     ("[ \t]\\([xX×]\\)[ \t]+[0-9½¼¾⅛⅜⅝⅞]" (framing--behind-phrase) nil (1 'framing-joining))))
  "Colours of the framing format.")

(provide 'framing-font-lock)
;;; framing-font-lock.el ends here
