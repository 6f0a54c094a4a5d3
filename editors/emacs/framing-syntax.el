;;; framing-syntax.el --- Elements, facts, comments and text of the framing format  -*- lexical-binding: t; -*-

;; Author: The Storyrod contributors
;; SPDX-License-Identifier: Apache-2.0 OR MIT

;;; Commentary:

;; What stands where in a `*.framing' file, for the modes and the commands.

;;; Code:

(require 'framing-words)

;;; Comments and text

(defvar framing-syntax-table
  (let ((table (make-syntax-table)))
    (modify-syntax-entry ?\n ">" table)
    (modify-syntax-entry ?\" "." table)
    (modify-syntax-entry ?' "." table)
    (modify-syntax-entry ?/ "." table)
    (modify-syntax-entry ?# "." table)
    (modify-syntax-entry ?@ "." table)
    (modify-syntax-entry ?% "." table)
    (modify-syntax-entry ?. "_" table)
    (modify-syntax-entry ?- "_" table)
    (modify-syntax-entry ?_ "_" table)
    (dolist (mark '(?“ ?” ?’ ?′ ?″))
      (modify-syntax-entry mark "." table))
    table)
  "Syntax of the framing format, but for what opens a comment or text.")

(defconst framing--opening-regexp
  "\\(?:^\\|[ \t\u00a0\ufeff]\\)\\(?:\\(--\\)\\|\\([\"“”]\\)[^ \t\u00a0\ufeff\n]\\)"
  "What opens a comment or text: it stands behind a blank.")

(defun framing-syntax-propertize (start end)
  "Mark comments and text between START and END.
Any other `\"' is an inch mark."
  (goto-char start)
  (while (< (point) end)
    (framing--propertize-line (line-end-position))
    (forward-line 1)
    (when (eobp) (goto-char end))))

(defun framing--propertize-line (end)
  "Mark the comment and the text from point to the line's END."
  (while (re-search-forward framing--opening-regexp end t)
    (if (match-beginning 1)
        (let ((opening (match-beginning 1)))
          (put-text-property opening (1+ opening) 'syntax-table (string-to-syntax "<"))
          (goto-char end))
      (let ((opening (match-beginning 2))
            (closing (if (eq (char-after (match-beginning 2)) ?\") "\"" "[”\"]")))
        (goto-char (1+ opening))
        ;; Text without its second quote is not yet any.
        (when (re-search-forward closing end t)
          (put-text-property opening (1+ opening) 'syntax-table (string-to-syntax "|"))
          (put-text-property (1- (point)) (point) 'syntax-table (string-to-syntax "|")))))))

;;; Phrases

(defun framing-phrases-regexp (phrases)
  "Return a regexp for one of PHRASES; the first that fits wins.
Where a phrase has a blank, a text may have several."
  (if phrases
      (concat "\\_<\\(?:"
              (replace-regexp-in-string " " "[ \t]+" (mapconcat #'regexp-quote phrases "\\|") t t)
              "\\)\\_>")
    "\\`a\\`"))

(defun framing--longest-first (phrases)
  "Return PHRASES, each once, the longest first."
  (sort (delete-dups (copy-sequence phrases))
        (lambda (one other) (> (length one) (length other)))))

;;; Elements

(defconst framing-element-regexp
  (concat "^" (framing-phrases-regexp
               (framing--longest-first (apply #'append (mapcar #'car framing-words-elements)))))
  "What opens an element.")

(defconst framing--name-regexp "[[:alpha:]][[:alnum:]_.-]*"
  "A name.")

(defvar framing--by-opening
  (let ((table (make-hash-table :test #'equal)))
    (dolist (element framing-words-elements table)
      (dolist (opening (car element))
        (puthash opening element table))))
  "What `framing-words-elements' says of the words that open an element.")

(defun framing--single-blanks (text)
  "Return TEXT with one blank where it has several."
  (replace-regexp-in-string "[ \t]+" " " text))

(defun framing--kind (element)
  "Return the word that ELEMENT of the word list goes by."
  (caar element))

(defun framing--opened ()
  "Return what the word list says of the element that begins at point, or nil.
The words that open it are the match."
  (let ((case-fold-search nil))
    (when (looking-at framing-element-regexp)
      (gethash (framing--single-blanks (match-string-no-properties 0)) framing--by-opening))))

(defun framing--goto-opening ()
  "Go to the line in the first column that point belongs to.
Return nil where there is none."
  (forward-line 0)
  (or (looking-at-p "[^ \t\n-]")
      (re-search-backward "^[^ \t\n-]" nil t)))

(defun framing--element-above ()
  "Return what the word list says of the element around point, or nil."
  (save-excursion
    (when (framing--goto-opening)
      (framing--opened))))

(defun framing-looking-at-element-p ()
  "Return non-nil when the words at point open an element or take in a file."
  (let ((opening (substring framing-element-regexp 1))
        (case-fold-search nil))
    (or (looking-at-p opening)
        (looking-at-p (concat framing-words-include "\\_>")))))

(defun framing--element-at-point ()
  "Return the element that begins at point, as `framing-elements' does."
  (let ((element (framing--opened))
        (start (point))
        name title)
    (when element
      (save-excursion
        (goto-char (match-end 0))
        (when (looking-at (concat "[ \t]+\\(" framing--name-regexp "\\)"))
          (setq name (match-string-no-properties 1))
          (goto-char (match-end 0)))
        (when (looking-at "[ \t]+[\"“”]\\([^\"”\n]*\\)[\"”]")
          (setq title (match-string-no-properties 1))))
      (list (framing--kind element) name title start))))

(defun framing-elements ()
  "Return the elements of the buffer: a list of (KIND NAME TITLE POSITION).
NAME and TITLE are nil where there is none."
  (save-excursion
    (save-restriction
      (widen)
      (goto-char (point-min))
      (let ((case-fold-search nil)
            elements)
        (while (re-search-forward framing-element-regexp nil t)
          (goto-char (match-beginning 0))
          (push (framing--element-at-point) elements)
          (forward-line 1))
        (nreverse elements)))))

(defun framing-element-around ()
  "Return the element around point as (KIND NAME TITLE POSITION), or nil."
  (save-excursion
    (when (framing--goto-opening)
      (framing--element-at-point))))

(defun framing-element-label (element)
  "Return a label for ELEMENT, one of `framing-elements'."
  (pcase-let ((`(,kind ,name ,title) element))
    (if (or name title)
        (mapconcat #'identity (delq nil (list name title)) " ")
      kind)))

;;; Facts

(defvar framing--facts-by-kind (make-hash-table :test #'equal)
  "For each kind of element (REGEXP CLAIM-REGEXP TABLE): what begins its facts.")

(defun framing--facts-of (element)
  "Return (REGEXP CLAIM-REGEXP TABLE) for ELEMENT of the word list.
TABLE tells the plist of each phrase."
  (let ((kind (framing--kind element)))
    (or (gethash kind framing--facts-by-kind)
        (let ((facts (append (cddr element) framing-words-common))
              (table (make-hash-table :test #'equal)))
          (dolist (fact (reverse facts))
            (puthash (car fact) (cdr fact) table))
          (puthash kind
                   (list (framing-phrases-regexp (framing--longest-first (mapcar #'car facts)))
                         (concat (framing-phrases-regexp (nth 1 element))
                                 "[ \t]+\\(should[ \t]+be\\)\\_>")
                         table)
                   framing--facts-by-kind)))))

(defun framing-looking-at-fact ()
  "Return the plist of the fact whose phrase stands at point, or nil.
Its phrase is the match; in a claim, its `should be' is group 1."
  (let ((element (framing--element-above))
        (case-fold-search nil))
    (when element
      (pcase-let ((`(,phrases ,claims ,table) (framing--facts-of element)))
        (cond
         ((looking-at claims) '(:claim t))
         ((looking-at phrases)
          ;; Most facts have nothing to tell, but they are facts.
          (or (gethash (framing--single-blanks (match-string-no-properties 0)) table)
              '(:plain t))))))))

(defun framing-looking-at-fact-p ()
  "Return non-nil when a fact of the element above stands at point."
  (save-excursion
    (let ((start (point))
          (case-fold-search nil))
      ;; In the first column the line itself is no element above.
      (and (or (not (bolp)) (zerop (forward-line -1)))
           (let ((element (framing--element-above)))
             (goto-char start)
             (and element
                  (pcase-let ((`(,phrases ,claims) (framing--facts-of element)))
                    (or (looking-at-p phrases) (looking-at-p claims)))))))))

;;; Motion

(defun framing-beginning-of-element (&optional count)
  "Go back to the beginning of an element, COUNT times.
With COUNT below zero, go on to the beginning of one."
  (let ((count (or count 1))
        (case-fold-search nil))
    (if (> count 0)
        (re-search-backward framing-element-regexp nil 'move count)
      (when (looking-at-p framing-element-regexp)
        (forward-char 1))
      (when (re-search-forward framing-element-regexp nil 'move (- count))
        (goto-char (match-beginning 0))
        t))))

(defun framing-end-of-element ()
  "Go on to the end of the last fact of the element around point.
What stands between it and the next element belongs to that one."
  (forward-line 1)
  (let ((end (point)))
    (while (and (not (eobp)) (looking-at-p "[ \t]\\|$\\|--"))
      (let ((is-fact (looking-at-p "[ \t]+[^ \t\n-]")))
        (forward-line 1)
        (when is-fact
          (setq end (point)))))
    (goto-char end)))

(defun framing-forward-element (&optional _count)
  "Go to the end of the last line of the element at point, for hideshow."
  (framing-end-of-element)
  (when (bolp)
    (backward-char)))

;;; Outline

(defconst framing-outline-regexp
  (concat "^-- .*---\\|" framing-element-regexp)
  "What heads a section or an element.")

(defun framing-outline-level ()
  "Return 1 on the comment that heads a section, 2 on an element."
  (if (looking-at-p "--") 1 2))

(provide 'framing-syntax)
;;; framing-syntax.el ends here
