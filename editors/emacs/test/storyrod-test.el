;;; storyrod-test.el --- A session of eglot with the server  -*- lexical-binding: t; -*-

;;; Commentary:

;; Run by `run' beside this file: the real eglot, the real server.

;;; Code:

(require 'ert)
(require 'cl-lib)
(require 'storyrod)
(require 'flymake)

(defun storyrod-test-wait (what condition)
  "Wait until CONDITION returns non-nil and return that; fail with WHAT."
  (let ((end (+ (float-time) 20))
        value)
    (while (and (not (setq value (funcall condition))) (< (float-time) end))
      (accept-process-output nil 0.02))
    (or value
        (ert-fail (list what (mapcar #'flymake-diagnostic-text (flymake-diagnostics)))))))

(defun storyrod-test-spec (name)
  "Return the file of the sample or random spec NAME."
  (seq-find #'file-exists-p
            (mapcar (lambda (folder) (expand-file-name (concat folder name) (getenv "STORYROD_ROOT")))
                    '("grammar/samples/" "target/emacs/specs/"))))

(defun storyrod-test-specs ()
  "Return the names of all samples, and of the specs that cargo has drawn at random."
  (let ((names (mapcan (lambda (folder)
                         (directory-files (expand-file-name folder (getenv "STORYROD_ROOT")) nil
                                          "\\.framing\\'"))
                       (list "grammar/samples" "target/emacs/specs"))))
    (should (> (length names) 8))
    names))

(defmacro storyrod-test-session (sample &rest body)
  "Run BODY in a buffer of a copy of SAMPLE that eglot manages."
  (declare (indent 1))
  `(let* ((folder (file-name-as-directory (file-truename (make-temp-file "house" t))))
          (file (expand-file-name ,sample folder))
          (eglot-sync-connect t)
          (eglot-autoshutdown nil)
          (eglot-events-buffer-size 0)
          (eglot-send-changes-idle-time 0)
          (display-buffer-overriding-action '(display-buffer-same-window))
          (inhibit-message t))
     (copy-file (storyrod-test-spec ,sample) file)
     (unwind-protect
         (progn
           (switch-to-buffer (find-file-noselect file))
           (should (derived-mode-p 'framing-base-mode))
           (eglot-ensure)
           (run-hooks 'post-command-hook)
           (storyrod-test-wait "the server starts" #'eglot-managed-p)
           (goto-char (point-min))
           ,@body)
       (let ((server (eglot-current-server)))
         (when server
           (eglot-shutdown server nil 10)))
       (dolist (buffer (buffer-list))
         (when (string-prefix-p folder (or (buffer-file-name buffer) ""))
           (with-current-buffer buffer
             (set-buffer-modified-p nil)
             (kill-buffer))))
       (delete-directory folder t))))

(defun storyrod-test-replace (old new)
  "Put NEW where OLD stands first; point is behind it."
  (goto-char (point-min))
  (should (search-forward old nil t))
  (replace-match new t t))

(defun storyrod-test-goto (text)
  "Go behind the place where TEXT stands first."
  (goto-char (point-min))
  (should (search-forward text nil t)))

(defun storyrod-test-diagnostics ()
  "Return the diagnostics that flymake shows now as (TEXT MESSAGE)."
  (eglot--signal-textDocument/didChange)
  (mapcar (lambda (diagnostic)
            (list (buffer-substring-no-properties (flymake-diagnostic-beg diagnostic)
                                                  (flymake-diagnostic-end diagnostic))
                  (flymake-diagnostic-text diagnostic)))
          (flymake-diagnostics)))

(defun storyrod-test-printed (&rest arguments)
  "Return what the program prints for ARGUMENTS."
  (with-temp-buffer
    (should (eql 0 (apply #'call-process framing-program nil t nil arguments)))
    (buffer-string)))

;;; Findings and their cures

(ert-deftest storyrod-one-changed-number ()
  (storyrod-test-session "first.framing"
    (should (equal (storyrod-test-diagnostics) nil))
    ;; By hand: 100'-0" less deck 3/4", joist 9-1/4" and sill 1-1/2" is 99'-0 1/2".
    (storyrod-test-replace "top           99'-0 1/2\"" "top           98'-4\"")
    (let ((shown (storyrod-test-wait "the low wall is found" #'storyrod-test-diagnostics)))
      (should (equal (car (car shown)) "98'-4\""))
      (should (string-match-p "the top of wall W1 is 8-1/2\" too low for joists J1" (cadr (car shown)))))
    ;; The cure, by its title.
    (backward-char 2)
    (let* ((titles (mapcar (lambda (action) (plist-get action :title))
                           (storyrod-test-actions)))
           (cure "write 99'-0 1/2\""))
      (should (member cure titles))
      ;; Eglot takes an answer by the keyboard for one without a menu.
      (let ((last-nonmenu-event ?\r)
            (completing-read-function (lambda (&rest _) cure)))
        (call-interactively #'eglot-code-actions)))
    (storyrod-test-wait "the cure is written"
                        (lambda () (save-excursion
                                     (goto-char (point-min))
                                     (search-forward "top           99'-0 1/2\"" nil t))))
    (storyrod-test-wait "nothing is found afterwards"
                        (lambda () (null (storyrod-test-diagnostics))))))

(defun storyrod-test-actions ()
  "Return the code actions at point."
  (append (storyrod--request
           :textDocument/codeAction
           `(:textDocument (:uri ,(storyrod--uri))
             :range (:start ,(eglot--pos-to-lsp-position) :end ,(eglot--pos-to-lsp-position))
             :context (:diagnostics [])))
          nil))

;;; What eglot asks

(ert-deftest storyrod-hover-completion-rename-format ()
  (storyrod-test-session "first.framing"
    ;; Hover, as eldoc shows it.
    (storyrod-test-goto "bears on")
    (let (told)
      (eglot-hover-eldoc-function (lambda (text &rest _) (setq told text)))
      (storyrod-test-wait "the hover says what the fact means" (lambda () told))
      (should (string-match-p "bears on" told)))
    ;; What joists can bear on: walls, not joists.
    (storyrod-test-goto "bears on      W")
    (let* ((offer (eglot-completion-at-point))
           (offered (all-completions "W" (nth 2 offer))))
      (should (seq-some (lambda (one) (string-prefix-p "W4" one)) offered))
      (should-not (seq-some (lambda (one) (string-prefix-p "J1" one)) (all-completions "" (nth 2 offer)))))
    ;; Definition.
    (storyrod-test-goto "bears on      W2")
    (backward-char)
    (let ((there (xref-backend-definitions 'eglot (xref-backend-identifier-at-point 'eglot))))
      (should (= (xref-location-line (xref-item-location (car there)))
                 (save-excursion (storyrod-test-goto "wall W2") (line-number-at-pos)))))
    ;; A new name, everywhere.
    (eglot-rename "W77")
    (should (= (how-many "\\_<W77\\_>" (point-min) (point-max)) 3))
    (should (= (how-many "\\_<W2\\_>" (point-min) (point-max)) 0))
    ;; The one style.
    (let ((text (buffer-string)))
      (storyrod-test-replace "  bears on      W77" " bears   on W77")
      (eglot-format-buffer)
      (should (equal (buffer-string) text)))
    (storyrod-test-wait "nothing is found" (lambda () (null (storyrod-test-diagnostics))))))

;;; Sheets

(defun storyrod-test-shown (name)
  "Return the text of the sheet NAME and check how it is shown."
  (should (equal (buffer-name) name))
  (should (derived-mode-p 'special-mode))
  (should buffer-read-only)
  (prog1 (buffer-substring-no-properties (point-min) (point-max))
    (should (eq (key-binding "g") #'revert-buffer))))

(ert-deftest storyrod-sheets-are-what-the-program-prints ()
  (storyrod-test-session "loon-cove.framing"
    (storyrod-test-goto "column C1")
    (forward-line 1)
    (let ((source (current-buffer)))
      (call-interactively #'storyrod-takedown)
      (let ((sheet (storyrod-test-shown "*takedown of C1, loon-cove.framing*")))
        (should (equal sheet (storyrod-test-printed "takedown" file "C1")))
        (should (string-match-p "13,212 lb" sheet)))
      (switch-to-buffer source)
      (let ((current-prefix-arg '(4)))
        (call-interactively #'storyrod-takedown))
      (should (equal (storyrod-test-shown "*takedown, loon-cove.framing*")
                     (storyrod-test-printed "takedown" file)))
      (switch-to-buffer source)
      (storyrod-calc "B1")
      (should (equal (storyrod-test-shown "*calculation of B1, loon-cove.framing*")
                     (storyrod-test-printed "calc" file "B1")))
      (switch-to-buffer source)
      (storyrod-steps "main" "sunroom")
      (should (equal (storyrod-test-shown "*steps from main to sunroom, loon-cove.framing*")
                     (storyrod-test-printed "steps" file "main" "sunroom")))
      (switch-to-buffer source)
      (storyrod-rod)
      (let ((sheet (storyrod-test-shown "*rod list, loon-cove.framing*")))
        (should (equal sheet (storyrod-test-printed "rod" file)))
        ;; `g' asks about the text of now.
        (with-current-buffer source
          (storyrod-test-replace "at 98'-6\"" "at 98'-9\""))
        (revert-buffer)
        (let ((again (storyrod-test-shown "*rod list, loon-cove.framing*")))
          (should-not (equal again sheet))
          (should (string-match-p "at 98'-9\"" again))))
      ;; In no element a name is asked for, by kind and title.
      (switch-to-buffer source)
      (goto-char (point-min))
      (let* (offered
             (completing-read-function
              (lambda (_prompt names &rest _) (setq offered names) "F1")))
        (call-interactively #'storyrod-takedown)
        (should (equal (assoc "F1" offered) '("F1" "footing Pad under C1"))))
      (should (equal (buffer-name) "*takedown of F1, loon-cove.framing*"))
      ;; No document was opened by the server.
      (should (equal (directory-files folder nil "^[^.]") '("loon-cove.framing"))))))

(ert-deftest storyrod-walks-the-load-path ()
  (storyrod-test-session "loon-cove.framing"
    (storyrod-test-goto "beam B1")
    (storyrod-load-path)
    (let ((text (storyrod-test-shown "*load path of B1, loon-cove.framing*")))
      ;; The column carries 13,212 lb by the takedown above, and stands on its footing.
      (should (string-match-p "\n  column C1  13,136 lb.*\n    footing F1  13,212 lb" text))
      (should (string-match-p "What it carries\nbeam B1.*\n  joists J1" text)))
    (goto-char (point-min))
    (search-forward "footing F1")
    (push-button (match-beginning 0))
    (should (looking-at-p "footing F1"))))

;;; Colours, against the server's reading

(defun storyrod-test-tokens ()
  "Return the server's tokens of this buffer: (START END TYPE)."
  (let* ((server (eglot-current-server))
         (provider (plist-get (eglot--capabilities server) :semanticTokensProvider))
         (types (plist-get (plist-get provider :legend) :tokenTypes))
         (answer (jsonrpc-request server :textDocument/semanticTokens/full
                                  `(:textDocument (:uri ,(storyrod--uri)))))
         (data (append (plist-get answer :data) nil))
         (line 0)
         (column 0)
         tokens)
    ;; Columns are counted as server and client have agreed.
    (cl-flet ((place (column) (eglot--lsp-position-to-point (list :line line :character column))))
      (while data
        (pcase-let ((`(,lines ,columns ,length ,type) (seq-take data 4)))
          (setq column (if (zerop lines) (+ column columns) columns)
                line (+ line lines)
                data (nthcdr 5 data))
          (push (list (place column) (place (+ column length)) (aref types type)) tokens))))
    (nreverse tokens)))

(defun storyrod-test-face (position)
  "Return the one face at POSITION."
  (let ((face (get-text-property position 'face)))
    (if (consp face) (car face) face)))

(defconst storyrod-test-expected
  '(("keyword" framing-element)
    ("property" framing-fact)
    ("enumMember" framing-choice framing-stuff)
    ("number" framing-number)
    ("type" framing-unit)
    ("comment" font-lock-comment-face font-lock-comment-delimiter-face)
    ("operator" framing-joining framing-arithmetic)
    ("decorator" nil)
    ("string" font-lock-string-face)
    ;; Of names only the one on the first line has a colour.
    ("variable" framing-name nil)
    ("namespace" framing-name nil)
    ("class" framing-name nil)
    ("parameter" nil))
  "The faces of each of the server's types.")

(defun storyrod-test-behind (regexp)
  "Return non-nil when what stands before point on its line fits REGEXP."
  (looking-back (concat "^" regexp) (line-beginning-position)))

(defun storyrod-test-allowed (text type)
  "Return the faces that TEXT of TYPE at point may have."
  (cond
   ((equal text "/") '(nil))
   ;; What joins the parts of any fact does so where it is chosen too: `shot at B/3'.
   ((and (equal type "enumMember") (member text framing-words-joining)) '(framing-joining framing-choice))
   ;; The names of limits and profiles have no colour.
   ((and (equal type "property") (storyrod-test-behind "  \\(profile\\|limit\\) +")) '(nil))
   ;; The grammar takes `class 40' and `per 12' whole.
   ((and (eq major-mode 'framing-ts-mode) (storyrod-test-behind ".* \\(class\\|per\\) "))
    '(framing-stuff framing-joining))
   ((eq major-mode 'framing-ts-mode)
    (cdr (assoc type storyrod-test-expected)))
   ;; Words without quotes: `linoleum on board'.
   ((and (equal type "string") (not (string-prefix-p "\"" text))) '(nil framing-joining))
   ;; A grid line can be a figure.
   ((and (equal type "parameter") (string-match-p "\\`[0-9.]+\\'" text)) '(framing-number))
   ;; A floor that has the name of what can be chosen there.
   ((equal (list text type) '("basement" "namespace")) '(framing-name framing-choice nil))
   (t (cdr (assoc type storyrod-test-expected)))))

(defun storyrod-test-colours ()
  "Hold the colours of every sample to the server's tokens."
  (dolist (sample (storyrod-test-specs))
    (storyrod-test-session sample
      (font-lock-ensure)
      (let ((tokens (storyrod-test-tokens))
            (covered (make-bool-vector (1+ (point-max)) nil))
            wrong)
        (should (> (length tokens) 200))
        (pcase-dolist (`(,start ,end ,type) tokens)
          (let* ((text (buffer-substring-no-properties start end))
                 (allowed (save-excursion
                            (goto-char start)
                            (storyrod-test-allowed text type))))
            (cl-loop for position from start below end
                     do (aset covered position t)
                     unless (or (memq (char-after position) '(?\s ?\t))
                                (memq (storyrod-test-face position) allowed))
                     do (cl-pushnew (list (line-number-at-pos start) text type (storyrod-test-face position))
                                    wrong :test #'equal))))
        ;; What is coloured is something to the server too.
        (cl-loop for position from (point-min) below (point-max)
                 unless (or (not (storyrod-test-face position))
                            (aref covered position)
                            (memq (char-after position) '(?\s ?\t ?\n)))
                 do (push (list (line-number-at-pos position) position (storyrod-test-face position)) wrong))
        (should (equal (nreverse wrong) nil))))))

(ert-deftest storyrod-colours-are-the-server-s ()
  (storyrod-test-colours))

;;; By tree-sitter

(defvar major-mode-remap-alist)
(defvar treesit-language-source-alist)
(declare-function treesit-ready-p "treesit")
(declare-function treesit-search-subtree "treesit.c")
(declare-function treesit-buffer-root-node "treesit")
(declare-function treesit-install-language-grammar "treesit")
(declare-function framing-ts-mode "framing-ts-mode")

(defmacro storyrod-test-by-tree-sitter (&rest body)
  "Run BODY where files open in `framing-ts-mode'; `run' says whether they can."
  `(progn
     (skip-unless (getenv "FRAMING_GRAMMAR"))
     (require 'framing-ts-mode)
     (should (treesit-ready-p 'framing))
     (let ((major-mode-remap-alist '((framing-mode . framing-ts-mode))))
       ,@body)))

(ert-deftest storyrod-ts-colours-are-the-server-s ()
  (storyrod-test-by-tree-sitter
   (storyrod-test-colours)))

(ert-deftest storyrod-ts-knows-what-it-cannot-read ()
  (storyrod-test-by-tree-sitter
   (storyrod-test-session "loon-cove.framing"
     (should (eq major-mode 'framing-ts-mode))
     (should-not (treesit-search-subtree (treesit-buffer-root-node) "ERROR"))
     (setq-local treesit-font-lock-level 4)
     (treesit-font-lock-recompute-features)
     (storyrod-test-replace "bears on      PK1" "bears at      PK1")
     (font-lock-flush)
     (font-lock-ensure)
     (search-backward "at")
     (should (treesit-search-subtree (treesit-buffer-root-node) "ERROR"))
     (should (eq (storyrod-test-face (point)) 'font-lock-warning-face))
     (storyrod-test-goto "bears on      C1")
     (should (eq (storyrod-test-face (1- (point))) 'framing-reference)))))

(ert-deftest storyrod-ts-moves-by-element-and-fact ()
  (storyrod-test-by-tree-sitter
   (storyrod-test-session "first.framing"
     (storyrod-test-goto "wall W2")
     (forward-line 2)
     (forward-sentence)
     (should (looking-back "from          A/2 to B/2" (line-beginning-position)))
     (beginning-of-defun)
     (should (looking-at-p "wall W2"))
     (indent-region (point-min) (point-max))
     (should-not (buffer-modified-p))
     (should (assoc "wall" (framing--imenu-index))))))

(ert-deftest storyrod-ts-installs-its-grammar ()
  (storyrod-test-by-tree-sitter
   (let ((treesit-language-source-alist `((framing ,(concat "file://" (getenv "STORYROD_ROOT")) nil "grammar/tree-sitter/src")))
         (folder (make-temp-file "grammar" t)))
     (unwind-protect
         (progn
           (treesit-install-language-grammar 'framing folder)
           (should (file-expand-wildcards (expand-file-name "libtree-sitter-framing.*" folder))))
       (delete-directory folder t)))))

(provide 'storyrod-test)
;;; storyrod-test.el ends here
