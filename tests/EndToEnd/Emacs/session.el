;;; session.el --- A real editor's session, headless -*- lexical-binding: t; -*-

;; Opens a flawed file, waits for its diagnostics, hovers, completes, applies a fix, waits until the finding is gone, formats, leaves.
;;   emacs -Q --batch -l session.el
;; Leaves with status 0 when all went well, else 1 with the reason under "problem" in the result.
;; Environment: TECHLINT_CMD     the server's executable
;;              TECHLINT_ELISP   the folder that holds techlint.el
;;              TECHLINT_FILE    the file to open: a number without its unit in it
;;              TECHLINT_RESULT  where to write the JSON

(require 'package)
(setq package-user-dir (expand-file-name "elpa" temporary-file-directory))
;; Where Debian puts its packages; -Q leaves that out.
(add-to-list 'package-directory-list "/usr/share/emacs/site-lisp/elpa")
(package-initialize)
(require 'json)
(require 'cl-lib)
(add-to-list 'load-path (getenv "TECHLINT_ELISP"))
(require 'techlint)

(defvar session-result nil "What was seen, as an alist.")

(defun session-note (key value)
  "Keep VALUE under KEY."
  (push (cons key value) session-result))

(defun session-wait (what predicate)
  "Let the server work until PREDICATE holds; an error with WHAT after 20 seconds."
  (let ((until (+ (float-time) 20)))
    (while (and (not (funcall predicate)) (< (float-time) until))
      ;; Edits wait for idle moments, and a batch has none.
      (when (bound-and-true-p eglot--managed-mode) (eglot--signal-textDocument/didChange))
      (accept-process-output nil 0.02)
      (when (bound-and-true-p flymake-mode) (flymake-start)))
    (unless (funcall predicate) (error "%s" what))))

(defun session-codes ()
  "The codes of the diagnostics that flymake shows."
  (mapcar (lambda (one) (flymake-diagnostic-text one)) (flymake-diagnostics)))

(defun session-run ()
  "The session itself."
  (setq techlint-command (list (getenv "TECHLINT_CMD") "lsp")
        eglot-sync-connect 20
        eglot-autoshutdown nil)
  (find-file (getenv "TECHLINT_FILE"))
  (session-note 'mode (symbol-name major-mode))
  (apply #'eglot--connect (eglot--guess-contact))
  (let ((server (eglot-current-server)))
    (unless server (error "no server runs"))
    (session-wait "no diagnostic came" (lambda () (flymake-diagnostics)))
    (session-note 'diagnostics (vconcat (session-codes)))

    ;; Hover on the very place of the finding.
    (let ((place (flymake-diagnostic-beg (car (flymake-diagnostics)))))
      (goto-char place)
      (let ((hover (jsonrpc-request server :textDocument/hover (eglot--TextDocumentPositionParams))))
        (session-note 'hover (plist-get (plist-get hover :contents) :value)))

      ;; Complete a key of the first group.
      (save-excursion
        (goto-char (point-min))
        (search-forward "component:\n")
        (insert "  coat\n")
        (backward-char 1)
        (let* ((capf (eglot-completion-at-point))
               (all (all-completions (buffer-substring-no-properties (nth 0 capf) (nth 1 capf)) (nth 2 capf))))
          (session-note 'completions (vconcat (mapcar #'substring-no-properties all))))
        (delete-region (line-beginning-position) (line-beginning-position 2)))
      (session-wait "the finding did not come back" (lambda () (= 1 (length (flymake-diagnostics)))))

      ;; The first fix that is offered.
      (let (fixes)
        ;; The diagnostic that is shown may still be the one from before the last edit: ask until it is the new one.
        (session-wait
         "no fix was offered"
         (lambda ()
           (let ((shown (car (flymake-diagnostics))))
             (when shown
               (setq place (flymake-diagnostic-beg shown))
               (goto-char place)
               (setq fixes (eglot-code-actions place (1+ place) "quickfix"))))))
        (session-note 'fixes (vconcat (mapcar (lambda (one) (plist-get one :title)) fixes)))
        (eglot--apply-workspace-edit (plist-get (car fixes) :edit))))
    (session-wait "the finding did not go" (lambda () (null (flymake-diagnostics))))

    (save-excursion (goto-char (point-min)) (search-forward "technique:") (insert "    "))
    (eglot-format-buffer)
    (session-note 'text (buffer-substring-no-properties (point-min) (point-max)))
    (set-buffer-modified-p nil)
    (eglot-shutdown server nil 10)
    (session-note 'stopped (not (jsonrpc-running-p server)))))

(let ((status 0))
  (condition-case problem
      (session-run)
    (error (session-note 'problem (error-message-string problem))
           (setq status 1)))
  (with-temp-file (getenv "TECHLINT_RESULT") (insert (json-encode session-result)))
  (kill-emacs status))
;;; session.el ends here
