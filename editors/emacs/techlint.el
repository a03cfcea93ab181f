;;; techlint.el --- Start the TechLint language server for techniques -*- lexical-binding: t; -*-

;; SPDX-License-Identifier: MIT
;; Package-Requires: ((emacs "26.3") (eglot "1.9"))

;;; Commentary:

;; A mode for the files that TechLint judges, which starts `techlint lsp' through eglot.  (require 'techlint) is all there is to do.

;;; Code:

(require 'eglot)
(require 'project)

(defgroup techlint nil
  "Checks written ultrasonic weld-examination techniques."
  :group 'tools)

(defcustom techlint-command '("techlint" "lsp")
  "The command line of the server."
  :type '(repeat string)
  :group 'techlint)

;;;###autoload
(define-derived-mode techlint-mode prog-mode "TechLint"
  "Major mode for techniques, equipment libraries, requirement sets and settings."
  (setq-local comment-start "# ")
  (setq-local comment-start-skip "#+[ \t]*")
  (setq-local indent-tabs-mode nil)
  (setq-local tab-width 2)
  (setq-local font-lock-defaults
              '((("^\\s-*\\(?:- \\)?\\([a-z0-9-]+\\):" 1 font-lock-keyword-face)
                 ("[{,]\\s-*\\([a-z0-9-]+\\):" 1 font-lock-keyword-face)))))

(modify-syntax-entry ?# "<" techlint-mode-syntax-table)
(modify-syntax-entry ?\n ">" techlint-mode-syntax-table)

;;;###autoload
(dolist (ending '("\\.technique\\.yaml\\'" "\\.equipment\\.yaml\\'" "\\.requirements\\.yaml\\'" "/techlint\\.yaml\\'"))
  (add-to-list 'auto-mode-alist (cons ending 'techlint-mode)))

(defun techlint-project (folder)
  "The workspace of FOLDER: the nearest folder upwards with a techlint.yaml."
  (let ((root (locate-dominating-file folder "techlint.yaml")))
    (when root (cons 'transient root))))

(defun techlint--prefer-workspace ()
  "Look for a techlint.yaml before anything else."
  (add-hook 'project-find-functions #'techlint-project -10 t))

(add-hook 'techlint-mode-hook #'techlint--prefer-workspace)
(add-hook 'techlint-mode-hook #'eglot-ensure t)
(add-to-list 'eglot-server-programs '(techlint-mode . (lambda (&rest _) techlint-command)))

(provide 'techlint)
;;; techlint.el ends here
