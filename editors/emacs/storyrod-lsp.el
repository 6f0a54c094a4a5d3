;;; storyrod-lsp.el --- The storyrod language server by lsp-mode  -*- lexical-binding: t; -*-

;; Author: The Storyrod contributors
;; Version: 0.1.0
;; Package-Requires: ((emacs "28.1") (lsp-mode "8.0.0"))
;; Keywords: languages, tools
;; SPDX-License-Identifier: Apache-2.0 OR MIT

;;; Commentary:

;; For those who use lsp-mode instead of eglot: `lsp' in a `*.framing'
;; file starts `storyrod server'.

;;; Code:

(require 'lsp-mode)
(require 'framing-mode)

(defgroup storyrod-lsp nil
  "The language server for the framing of a house, by lsp-mode."
  :group 'framing)

(defcustom storyrod-lsp-settings nil
  "Settings of the server, as a property list.
For example (:codeLens :json-false :inlayHints (:ratios :json-false))."
  :type 'plist
  :group 'storyrod-lsp)

(dolist (mode '(framing-mode framing-ts-mode))
  (add-to-list 'lsp-language-id-configuration (cons mode "framing")))

(lsp-register-client
 (make-lsp-client
  :new-connection (lsp-stdio-connection (lambda () (list framing-program "server")))
  :activation-fn (lsp-activate-on "framing")
  :initialization-options (lambda () (or storyrod-lsp-settings (make-hash-table)))
  :server-id 'storyrod))

(provide 'storyrod-lsp)
;;; storyrod-lsp.el ends here
