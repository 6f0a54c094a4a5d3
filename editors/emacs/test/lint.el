;;; lint.el --- What a package must look like  -*- lexical-binding: t; -*-

;;; Commentary:

;; Fails when package-lint or checkdoc has anything to say of the files named.

;;; Code:

(require 'package-lint)
(require 'checkdoc)

(defconst lint-passed-over
  '(;; The project has no address.
    "Homepage or URL header"
    ;; No archive is at hand, so every version of a dependency is unknown.
    "not installable" "uninstallable")
  "Remarks of package-lint that say nothing of the package.")

(defvar lint-n-remarks 0)

(defun lint-remark (file line text)
  "Print TEXT on LINE of FILE and count it."
  (setq lint-n-remarks (1+ lint-n-remarks))
  (message "%s:%s: %s" file line text))

(dolist (file command-line-args-left)
  (with-current-buffer (find-file-noselect file)
    ;; Two packages: what begins with `framing', and storyrod.el.
    (let ((package-lint-main-file
           (if (string-prefix-p "framing" (file-name-nondirectory file)) "framing-mode.el" nil)))
      (pcase-dolist (`(,line ,_column ,_severity ,text) (package-lint-buffer))
        (unless (seq-some (lambda (part) (string-match-p part text)) lint-passed-over)
          (lint-remark file line text))))
    ;; It takes any word that ends like a verb for one.
    (let ((checkdoc-verb-check-experimental-flag nil)
          (checkdoc-autofix-flag 'never)
          (checkdoc-create-error-function
           (lambda (text start _end &optional _unfixable)
             (lint-remark file (if start (line-number-at-pos start) 1) text)
             nil)))
      (checkdoc-current-buffer t))))

(setq command-line-args-left nil)
(kill-emacs (if (zerop lint-n-remarks) 0 1))

;;; lint.el ends here
