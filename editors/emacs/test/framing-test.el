;;; framing-test.el --- Tests of framing-mode  -*- lexical-binding: t; -*-

;;; Commentary:

;; Run by `run' beside this file, without a server.

;;; Code:

(require 'ert)
(require 'cl-lib)
(require 'framing-mode)
(require 'hideshow)
(require 'outline)

(defvar framing-test-samples
  (directory-files (expand-file-name "grammar/samples" (getenv "STORYROD_ROOT")) t "\\.framing\\'")
  "The houses that come with the project.")

(defmacro framing-test-with (text &rest body)
  "Run BODY in a buffer of `framing-mode' with TEXT; `|' is point."
  (declare (indent 1))
  `(with-temp-buffer
     (insert ,text)
     (framing-mode)
     (goto-char (point-min))
     (when (search-forward "|" nil t)
       (delete-char -1))
     ,@body))

(defun framing-test-face (position)
  "Return the one face at POSITION."
  (let ((face (get-text-property position 'face)))
    (if (consp face) (car face) face)))

(defun framing-test-runs ()
  "Return what of the buffer has a face: a list of (TEXT FACE)."
  (font-lock-ensure)
  (let ((position (point-min))
        runs)
    (while (< position (point-max))
      (let ((face (framing-test-face position))
            (end (next-single-property-change position 'face nil (point-max))))
        (when face
          (push (list (string-trim (buffer-substring-no-properties position end)) face) runs))
        (setq position end)))
    (nreverse runs)))

(defun framing-test-faces (text)
  "Return what of TEXT has a face, without `framing-' before its name."
  (framing-test-with text
    (mapcar (pcase-lambda (`(,run ,face))
              (list run (intern (replace-regexp-in-string
                                 "\\`\\(framing\\|font-lock\\)-\\|-face\\'" "" (symbol-name face)))))
            (framing-test-runs))))

;;; Colours

(ert-deftest framing-colours-each-kind-of-word ()
  (dolist (case
           '(("wall W1 \"South wall\"  -- cast \"first\"\n"
              ("wall" element) ("W1" name) ("\"South wall\"" string)
              ("--" comment-delimiter) ("cast \"first\"" comment))
             ("hold point H1\n" ("hold point" element) ("H1" name))
             ("post P1\n  at B/3\n" ("post" element) ("P1" name) ("at" fact) ("3" number))
             ("include \"walls.framing\"\n" ("include" element) ("\"walls.framing\"" string))
             ("beam B1\n  bears   on W1 for 3-1/2\"\n"
              ("beam" element) ("B1" name) ("bears   on" fact) ("for" joining) ("3-1/2\"" number))
             ("beam B1\n  size 3-ply 2x10 SPF No.2\n"
              ("beam" element) ("B1" name) ("size" fact) ("3-ply" number) ("2x10" number)
              ("SPF" stuff) ("No.2" stuff))
             ("beam B1\n  size 5-1/8 x 12 glulam 24F-V4\n"
              ("beam" element) ("B1" name) ("size" fact) ("5-1/8" number) ("x" joining) ("12" number)
              ("glulam" stuff) ("24F-V4" stuff))
             ("beam B1\n  size W8x24\n" ("beam" element) ("B1" name) ("size" fact) ("W8x24" stuff))
             ("beam B1\n  from A plus 4-1/2\" / 3 to C less 4-1/2\" / 3\n"
              ("beam" element) ("B1" name) ("from" fact) ("plus" arithmetic) ("4-1/2\"" number)
              ("3" number) ("to" joining) ("less" arithmetic) ("4-1/2\"" number) ("3" number))
             ("floor main\n  live 40 psf\n  guard east 36\" high\n"
              ("floor" element) ("main" name) ("live" fact) ("40" number) ("psf" unit)
              ("guard" fact) ("east" choice) ("36\"" number) ("high" joining))
             ("post C1\n  cut should be 96-5/16\" within 1/16\"\n"
              ("post" element) ("C1" name) ("cut" fact) ("should be" element)
              ("96-5/16\"" number) ("within" joining) ("1/16\"" number))
             ("intent \"Level\"\n  keep half of dead reaction of J1 on B1 <= top of SL2\n"
              ("intent" element) ("\"Level\"" string) ("keep" fact) ("half of" arithmetic) ("dead" choice)
              ("reaction" fact) ("of" joining) ("on" joining) ("<=" joining) ("top" fact) ("of" joining))
             ("project \"P\"\n  snow 42 psf on roof\n  waive frost-depth because \"x\" until 2027-09-01\n"
              ("project" element) ("\"P\"" string) ("snow" fact) ("42" number) ("psf" unit) ("on" joining)
              ("roof" choice) ("waive" fact) ("because" joining) ("\"x\"" string) ("until" joining)
              ("2027-09-01" number))
             ;; A grid line is no choice where nothing can be chosen.
             ("grid\n  x A 0', E 16'-0\"\n"
              ("grid" element) ("x" fact) ("0'" number) ("16'-0\"" number))
             ;; A phrase of another element is none of this one, and capitals count.
             ("grid\n  bears on W1\nWall W1\n  top 9'\n" ("grid" element) ("9'" number))))
    (should (equal (framing-test-faces (car case)) (cdr case)))))

(ert-deftest framing-colours-numbers-in-all-spellings ()
  (dolist (number '("9-1/2\"" "9 1/2\"" "9½\"" "9-½\"" "9.5\"" "3/4\"" "¾\"" "5⅛”" "0'-9 1/2\"" "12'-6\""
                    "12' 6\"" "12'6\"" "12'-6 1/2\"" "12'-6-1/2\"" "12'6-1/2\"" "12' 6 1/2\"" "12'-1/2\""
                    "12'" "8 '" "2.5'" "7'-6.5\"" "12’-6 1/2”" "12′-6½″" "12'-6''" "-13 5/8\"" "-1'-2\""
                    "−5'" "0'" "±0" "+/-0'-0\"" "EL. +100'-0\"" "EL 98'-10 3/8\"" "+100'-0\""
                    "(-)1'-1 5/8\"" "12'6" "12'-6 1/2" "19%" "2027-03-01" "#5" "2x10" "2×10" "3-ply" "3"
                    "7.5" "9-1/2" "3-1/2x3-1/2x1/4" "9\"x9\"x1/2\"" "2'-9\"X2'-9\"X14\"" "1.4e6"))
    (should (equal (framing-test-faces (concat "wall W1\n  top " number "\n"))
                   `(("wall" element) ("W1" name) ("top" fact) (,number number)))))
  (dolist (quantity '("14 in" "2.5 ft" "2-1/2 ft" "240 mm" "2.4 m" "40 psf" "1.9 kPa" "3.6 kN/m" "3.6 kN"
                      "-200 lb" "1.4e6 psi" "256 sq ft" "12 kips" "14in" "250plf"))
    (string-match "\\`\\([-0-9./e]+\\) *\\(.*\\)\\'" quantity)
    (let ((number (match-string 1 quantity))
          (unit (match-string 2 quantity)))
      (should (equal (framing-test-faces (concat "wall W1\n  top " quantity "\n"))
                     `(("wall" element) ("W1" name) ("top" fact) (,number number) (,unit unit))))))
  ;; Figures in a name are no number.
  (dolist (name '("W8x24" "S-102" "J2.5"))
    (should (equal (framing-test-faces (concat "sheet A-1\n  refers to " name "\n"))
                   '(("sheet" element) ("A-1" name) ("refers to" fact))))))

(ert-deftest framing-inch-marks-open-no-text ()
  (dolist (line '("  size 2'-9\" x 2'-9\" x 14\"" "  top 99'-0 1/2\", 98'-0\" at B" "  width 8 \" wide"
                  "  plate 7\" x 8\" x 1\" -- a 1\" plate" "  at B less 1'-11\"/1"))
    (framing-test-with (concat "pocket P1\n" line "\nwall W1\n")
      (syntax-propertize (point-max))
      (let ((position (point-min)))
        (while (< position (point-max))
          (should-not (nth 3 (syntax-ppss position)))
          (setq position (1+ position))))))
  ;; Text is what stands between quotes, whatever it holds, and ends with its line.
  (dolist (case '(("wall W1 \"8\" x\" 9\"" "\"8\"") ("wall W1 \"a -- b\" -- c" "\"a -- b\"")
                  ("wall W1 “South” x" "“South”") ("wall W1 \"\" x" "\"\"") ("wall W1 \"open\n  top 9\"" nil)))
    (framing-test-with (car case)
      (let ((text (car (seq-find (lambda (run) (eq (cadr run) 'font-lock-string-face))
                                 (framing-test-runs)))))
        (should (equal text (cadr case)))))))

(ert-deftest framing-comments-stand-behind-a-blank ()
  (framing-test-with "wall W1--x -- y"
    (syntax-propertize (point-max))
    (should-not (nth 4 (syntax-ppss 11)))
    (should (nth 4 (syntax-ppss (point-max))))))

;;; Editing

(ert-deftest framing-indents-a-formatted-sample-to-itself ()
  (dolist (sample framing-test-samples)
    (with-temp-buffer
      (insert-file-contents sample)
      (framing-mode)
      (let ((text (buffer-string)))
        (indent-region (point-min) (point-max))
        (should (equal text (buffer-string)))
        ;; Flat or deep, facts find back; what could be an element too stays where it is.
        (goto-char (point-min))
        (while (re-search-forward "^  \\([^ \n]\\)" nil t)
          (goto-char (match-beginning 1))
          (insert "     "))
        (indent-region (point-min) (point-max))
        (should (equal text (buffer-string)))))))

(ert-deftest framing-indents-while-one-types ()
  (framing-test-with "|"
    (electric-indent-local-mode 1)
    (dolist (line '("wall W1" "kind concrete" "from A/1 to B/1" "" "beam B1" "size 2x10"))
      (insert line)
      (call-interactively #'newline))
    (should (equal (buffer-string)
                   "wall W1\n  kind concrete\n  from A/1 to B/1\n\nbeam B1\n  size 2x10\n  "))
    ;; What opens an element and is no fact of this one goes to the first column.
    (insert "wall W2")
    (call-interactively #'newline)
    (should (string-suffix-p "\nwall W2\n  " (buffer-string))))
  (framing-test-with "joists J1\nfill A to B|"
    (indent-for-tab-command)
    (should (equal (buffer-string) "joists J1\n  fill A to B"))
    (should (eobp))))

(ert-deftest framing-writes-comments ()
  (framing-test-with "wall W1\n  top 9'|"
    (comment-dwim nil)
    (should (equal (buffer-string) (concat "wall W1\n  top 9'" (make-string 34 ?\s) "-- "))))
  (framing-test-with "wall W1\n  top 9'\n"
    (comment-region (point-min) (point-max))
    (should (equal (buffer-string) "-- wall W1\n--   top 9'\n"))
    (uncomment-region (point-min) (point-max))
    (should (equal (buffer-string) "wall W1\n  top 9'\n"))))

;;; Moving and folding

(defconst framing-test-house
  (concat "-- concrete ------\n\n-- A note.\nwall W1 \"South wall\"\n  kind concrete\n\n  top 9'  -- x\n\n"
          "-- The note of W2.\nwall W2\n  kind framed\n\n-- wood ---------\n\nhold point \"Before the pour\"\n"
          "  before pour\n"))

(ert-deftest framing-moves-by-element ()
  (framing-test-with framing-test-house
    (search-forward "top")
    (beginning-of-defun)
    (should (looking-at-p "wall W1"))
    (end-of-defun)
    (should (looking-back "top 9'  -- x\n" (point-min)))
    (search-forward "framed")
    (mark-defun)
    (should (string-match-p "wall W2\n  kind framed\n\\'"
                            (buffer-substring (region-beginning) (region-end))))
    (goto-char (point-min))
    (beginning-of-defun -1)
    (should (looking-at-p "wall W1"))))

(ert-deftest framing-lists-elements-by-kind ()
  (framing-test-with framing-test-house
    (let ((index (funcall imenu-create-index-function)))
      (should (equal (mapcar (lambda (group) (cons (car group) (mapcar #'car (cdr group)))) index)
                     '(("wall" "W1 South wall" "W2") ("hold point" "Before the pour"))))
      (goto-char (cdr (nth 2 (car index))))
      (should (looking-at-p "wall W2"))))
  ;; As many as there are lines in the first column that are no comment.
  (dolist (sample framing-test-samples)
    (with-temp-buffer
      (insert-file-contents sample)
      (framing-mode)
      (should (> (length (framing-elements)) 5))
      (should (= (length (framing-elements)) (how-many "^[a-z]" (point-min) (point-max)))))))

(ert-deftest framing-folds-an-element ()
  (framing-test-with framing-test-house
    (hs-minor-mode 1)
    (search-forward "concrete\n\n  t")
    (hs-hide-block)
    (let ((hidden (seq-find (lambda (overlay) (overlay-get overlay 'hs)) (overlays-in (point-min) (point-max)))))
      (should (equal (buffer-substring-no-properties (overlay-start hidden) (overlay-end hidden))
                     "\n  kind concrete\n\n  top 9'  -- x")))
    (hs-show-all)
    (hs-minor-mode -1)
    (outline-minor-mode 1)
    (goto-char (point-min))
    (should (outline-on-heading-p))
    (should (= (funcall outline-level) 1))
    (outline-next-visible-heading 1)
    (should (looking-at-p "wall W1"))
    (should (= (funcall outline-level) 2))
    (goto-char (point-min))
    (outline-hide-sublevels 1)
    (should (invisible-p (+ 3 (string-match "wall W1" (buffer-string)))))
    (should-not (invisible-p (+ 3 (string-match "-- wood" (buffer-string)))))))

(ert-deftest framing-opens-its-files ()
  (should (eq (cdr (assoc "house.framing" auto-mode-alist #'string-match-p)) 'framing-mode)))

;;; Compilation

(ert-deftest framing-compile-jumps-to-a-finding ()
  (let* ((folder (make-temp-file "framing" t))
         (file (expand-file-name "house.framing" folder))
         (compilation-ask-about-save nil)
         (display-buffer-overriding-action '(display-buffer-same-window)))
    (unwind-protect
        (progn
          (with-temp-file file
            (insert-file-contents (expand-file-name "grammar/samples/first.framing" (getenv "STORYROD_ROOT")))
            (should (search-forward "bears on      W1" nil t))
            (replace-match "bears on      W9"))
          (find-file file)
          (should (equal compile-command "storyrod lint --format lines"))
          (let* ((buffer (compile compile-command))
                 (process (get-buffer-process buffer)))
            (while (process-live-p process)
              (accept-process-output process 0.1))
            (with-current-buffer buffer
              (compilation--ensure-parse (point-max))
              (goto-char (point-min))
              (should (re-search-forward "error: nothing is named `W9`" nil t))
              (forward-line 0)
              (compile-goto-error)))
          (should (equal (buffer-file-name) (file-truename file)))
          (should (looking-at-p "W9 for")))
      (delete-directory folder t)))
  (dolist (case '(("a.framing:3:17: warning: b [c]" 1) ("a.framing:3:17: advice: b [c]" 0)
                  ("a.framing:3:17: error: b [c]" 2)))
    (with-temp-buffer
      (insert (car case) "\n")
      (compilation-mode)
      (compilation--ensure-parse (point-max))
      (should (= (compilation--message->type (get-text-property (point-min) 'compilation-message))
                 (cadr case))))))

(provide 'framing-test)
;;; framing-test.el ends here
