;;; storyrod.el --- What the storyrod language server knows of a house  -*- lexical-binding: t; -*-

;; Author: The Storyrod contributors
;; Version: 0.1.0
;; Package-Requires: ((emacs "28.1") (eglot "1.9"))
;; Keywords: languages, tools
;; SPDX-License-Identifier: Apache-2.0 OR MIT

;;; Commentary:

;; Eglot starts `storyrod server' for `*.framing' files.  The commands
;; here show what it writes of a house: the takedown of all loads, the
;; calculation sheet of a member, the rod list, the risers between two
;; floors, and the load path.
;;
;; Have it checked by a licensed professional: local codes and the
;; products' published values govern.

;;; Code:

(require 'eglot)
(require 'framing-mode)

(defgroup storyrod nil
  "The language server for the framing of a house."
  :group 'framing)

(defcustom storyrod-settings nil
  "Settings of the server, as a property list.
For example (:codeLens :json-false :inlayHints (:ratios :json-false))."
  :type 'plist
  :group 'storyrod)

(defun storyrod-contact (&rest _)
  "Return how eglot starts the server."
  ;; The commands here show the sheets; the server need not open them.
  (list framing-program "server" :initializationOptions
        (plist-put (copy-sequence storyrod-settings) :opensSheets :json-false)))

(add-to-list 'eglot-server-programs
             '((framing-mode framing-ts-mode) . storyrod-contact))
(put 'framing-mode 'eglot-language-id "framing")
(put 'framing-ts-mode 'eglot-language-id "framing")

;;; Asking

(declare-function eglot--signal-textDocument/didChange "eglot" ())
(declare-function eglot--current-server-or-lose "eglot" ())
(declare-function eglot--pos-to-lsp-position "eglot" (&optional pos))

(defun storyrod--uri ()
  "Return the address of the file of this buffer."
  (let ((path (buffer-file-name (buffer-base-buffer))))
    (unless path
      (user-error "This buffer has no file"))
    ;; Eglot gave its functions public names later.
    (funcall (if (fboundp 'eglot-path-to-uri) 'eglot-path-to-uri 'eglot--path-to-uri) path)))

(defun storyrod--path (uri)
  "Return the file at the address URI."
  (funcall (if (fboundp 'eglot-uri-to-path) 'eglot-uri-to-path 'eglot--uri-to-path) uri))

(defun storyrod--request (method parameters)
  "Ask the server of this buffer METHOD with PARAMETERS, about the text of now."
  (let ((server (eglot--current-server-or-lose)))
    (eglot--signal-textDocument/didChange)
    (jsonrpc-request server method parameters)))

;;; Sheets

(defvar-local storyrod--question nil
  "What this sheet answers: (FILE WRITER).
WRITER returns its text when called in a buffer of FILE.")

(define-derived-mode storyrod-sheet-mode special-mode "Sheet"
  "Major mode for what the server writes of a house.
\\<storyrod-sheet-mode-map>\\[revert-buffer] asks it again, \\[quit-window] goes back."
  (setq-local truncate-lines t)
  (setq-local revert-buffer-function #'storyrod--write-again))

(defun storyrod--write-again (&rest _)
  "Ask the question of this sheet again and show the answer."
  (pcase-let ((`(,file ,writer) storyrod--question)
              (inhibit-read-only t)
              (place (point)))
    (let ((text (with-current-buffer (find-file-noselect file)
                  (funcall writer))))
      (erase-buffer)
      (insert text)
      (goto-char (min place (point-max))))))

(defun storyrod--show (name writer)
  "Show what WRITER returns in a read-only buffer named after NAME and this file."
  (let* ((file (buffer-file-name (buffer-base-buffer)))
         (text (funcall writer))
         (buffer (get-buffer-create (format "*%s, %s*" name (file-name-nondirectory file)))))
    (with-current-buffer buffer
      (storyrod-sheet-mode)
      (setq storyrod--question (list file writer))
      (let ((inhibit-read-only t))
        (erase-buffer)
        (insert text)
        (goto-char (point-min))))
    (pop-to-buffer buffer)))

(defun storyrod--show-sheet (name command &rest arguments)
  "Show the sheet that the server's COMMAND writes for ARGUMENTS, under NAME."
  (storyrod--show
   name
   (lambda ()
     (storyrod--request :workspace/executeCommand
                        `(:command ,command
                          :arguments [(:uri ,(storyrod--uri) ,@arguments)])))))

;;; Names

(defun storyrod--names (&optional kind)
  "Return (NAME TITLE) of the elements of this buffer, or of those of KIND."
  (delq nil (mapcar (pcase-lambda (`(,its-kind ,name ,title))
                      (when (and name (or (not kind) (equal kind its-kind)))
                        (list name (string-join (delq nil (list its-kind title)) " "))))
                    (framing-elements))))

(defun storyrod--read-name (prompt &optional kind default)
  "Ask with PROMPT for the name of an element, or of one of KIND.
DEFAULT is taken for an empty answer.  An element of another file
can be named too."
  (let* ((names (storyrod--names kind))
         (completion-extra-properties
          (list :annotation-function
                (lambda (name) (concat "  " (cadr (assoc name names)))))))
    (completing-read (format-prompt prompt default) names nil nil nil nil default)))

(defun storyrod--element (prompt)
  "Return the name of the element at point; ask with PROMPT where there is none."
  (or (nth 1 (framing-element-around))
      (storyrod--read-name prompt)))

;;; Commands

;;;###autoload
(defun storyrod-takedown (element)
  "Show what comes down on ELEMENT, the one at point.
With a prefix argument show what everything carries."
  (interactive (list (unless current-prefix-arg (storyrod--element "Takedown of"))))
  (if element
      (storyrod--show-sheet (format "takedown of %s" element) "storyrod.takedown" :element element)
    (storyrod--show-sheet "takedown" "storyrod.takedown")))

;;;###autoload
(defun storyrod-calc (element)
  "Show the calculation sheet of ELEMENT, the one at point.
With a prefix argument show the sheets of all."
  (interactive (list (unless current-prefix-arg (storyrod--element "Calculation sheet of"))))
  (if element
      (storyrod--show-sheet (format "calculation of %s" element) "storyrod.calc" :element element)
    (storyrod--show-sheet "calculations" "storyrod.calc")))

;;;###autoload
(defun storyrod-rod ()
  "Show the rod list: every elevation from the footings up."
  (interactive)
  (storyrod--show-sheet "rod list" "storyrod.rod"))

;;;###autoload
(defun storyrod-steps (upper lower)
  "Show the step between the floors UPPER and LOWER, divided into risers."
  (interactive
   (let* ((around (framing-element-around))
          (upper (storyrod--read-name "Upper floor" "floor"
                                      (and (equal (car around) "floor") (nth 1 around)))))
     (list upper (storyrod--read-name "Lower floor" "floor"))))
  (storyrod--show-sheet (format "steps from %s to %s" upper lower)
                        "storyrod.steps" :upper upper :lower lower))

;;; The load path

(defun storyrod--visit (button)
  "Go to the element that BUTTON names."
  (pcase-let ((`(,uri ,line) (button-get button 'storyrod-place)))
    (pop-to-buffer (find-file-noselect (storyrod--path uri)))
    (goto-char (point-min))
    (forward-line line)))

(defun storyrod--item-line (item depth)
  "Return a line for ITEM of the call hierarchy, DEPTH steps along the load path."
  (let ((start (plist-get (plist-get item :selectionRange) :start)))
    (concat (make-string (* 2 depth) ?\s)
            (make-text-button (copy-sequence (plist-get item :name)) nil
                              'action #'storyrod--visit
                              'storyrod-place (list (plist-get item :uri) (plist-get start :line)))
            "  " (plist-get item :detail) "\n")))

(defun storyrod--path-lines (item method key depth above)
  "Return ITEM and below it what METHOD tells of it under KEY, as text.
DEPTH is how far along the load path it lies.  ABOVE are the names
on the way to it: what carries itself has no end."
  (let* ((name (plist-get item :name))
         (calls (unless (member name above)
                  (storyrod--request method `(:item ,item)))))
    (concat (storyrod--item-line item depth)
            (mapconcat (lambda (call)
                         (storyrod--path-lines (plist-get call key) method key
                                               (1+ depth) (cons name above)))
                       calls ""))))

(defun storyrod--load-path (position)
  "Return the load path of the element at POSITION, as text."
  (let ((items (storyrod--request :textDocument/prepareCallHierarchy
                                  `(:textDocument (:uri ,(storyrod--uri)) :position ,position))))
    (when (seq-empty-p items)
      (user-error "No load path begins here"))
    (let ((item (seq-elt items 0)))
      (concat "Where its load goes\n"
              (storyrod--path-lines item :callHierarchy/outgoingCalls :to 0 nil)
              "\nWhat it carries\n"
              (storyrod--path-lines item :callHierarchy/incomingCalls :from 0 nil)))))

;;;###autoload
(defun storyrod-load-path ()
  "Show where the load of the element at point goes, and where it comes from."
  (interactive)
  (pcase-let* ((`(,_ ,name ,_ ,start) (or (framing-element-around)
                                          (user-error "There is no element here"))))
    (unless name
      (user-error "This element has no name"))
    (storyrod--show
     (format "load path of %s" name)
     (lambda ()
       (save-excursion
         (save-restriction
           (widen)
           (goto-char start)
           (search-forward name)
           (backward-char)
           (storyrod--load-path (eglot--pos-to-lsp-position))))))))

(provide 'storyrod)
;;; storyrod.el ends here
