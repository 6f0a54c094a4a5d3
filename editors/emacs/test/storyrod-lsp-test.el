;;; storyrod-lsp-test.el --- A session of lsp-mode with the server  -*- lexical-binding: t; -*-

;;; Commentary:

;; Run by `run' beside this file, where lsp-mode is installed.

;;; Code:

(require 'ert)
(require 'seq)
(require 'storyrod-lsp)
;; What lsp-mode turns on by itself.
(load "lsp-mode-autoloads" t t)

(defun storyrod-lsp-test-wait (what condition)
  "Wait until CONDITION returns non-nil and return that; fail with WHAT."
  (let ((end (+ (float-time) 20))
        value)
    (while (and (not (setq value (funcall condition))) (< (float-time) end))
      (accept-process-output nil 0.02))
    (or value (ert-fail what))))

(defun storyrod-lsp-test-messages ()
  "Return the messages of all findings shown."
  (let (messages)
    (maphash (lambda (_file diagnostics)
               (seq-doseq (diagnostic diagnostics)
                 (push (lsp:diagnostic-message diagnostic) messages)))
             (lsp-diagnostics t))
    messages))

(ert-deftest storyrod-lsp-session ()
  (let* ((folder (file-name-as-directory (file-truename (make-temp-file "house" t))))
         (file (expand-file-name "first.framing" folder))
         (lsp-auto-guess-root t)
         (lsp-enable-file-watchers nil)
         (lsp-restart 'ignore)
         (lsp-enable-snippet nil)
         (lsp-diagnostics-provider :none)
         (lsp-completion-provider :none)
         (lsp-session-file (expand-file-name "session" folder))
         (inhibit-message t))
    (copy-file (expand-file-name "grammar/samples/first.framing" (getenv "STORYROD_ROOT")) file)
    (unwind-protect
        (progn
          (switch-to-buffer (find-file-noselect file))
          (lsp-workspace-folders-add folder)
          (lsp)
          (storyrod-lsp-test-wait "the server starts"
                                  (lambda ()
                                    (seq-some (lambda (workspace)
                                                (eq (lsp--workspace-status workspace) 'initialized))
                                              (lsp-workspaces))))
          ;; By hand: 100'-0" less deck 3/4", joist 9-1/4" and sill 1-1/2" is 99'-0 1/2".
          (goto-char (point-min))
          (search-forward "top           99'-0 1/2\"")
          (replace-match "top           98'-4\"")
          (storyrod-lsp-test-wait
           "the low wall is found"
           (lambda ()
             (seq-some (lambda (message) (string-match-p "wall W1 is 8-1/2\" too low" message))
                       (storyrod-lsp-test-messages))))
          (backward-char 2)
          (lsp-execute-code-action
           (or (seq-find (lambda (action) (equal (lsp:code-action-title action) "write 99'-0 1/2\""))
                         (lsp-code-actions-at-point))
               (ert-fail "the cure is offered")))
          (should (string-match-p "top           99'-0 1/2\"" (thing-at-point 'line)))
          (storyrod-lsp-test-wait "nothing is found afterwards"
                                  (lambda () (null (storyrod-lsp-test-messages))))
          ;; A lens stands above an element, and tells what it opens.
          (should (seq-some (lambda (lens) (gethash "command" lens))
                            (lsp-request "textDocument/codeLens"
                                         `(:textDocument ,(lsp--text-document-identifier))))))
      (dolist (workspace (lsp-workspaces))
        (lsp-workspace-shutdown workspace))
      (with-current-buffer (get-file-buffer file)
        (set-buffer-modified-p nil)
        (kill-buffer))
      (delete-directory folder t))))

(provide 'storyrod-lsp-test)
;;; storyrod-lsp-test.el ends here
