" Starts `techlint lsp` through vim-lsp for the files that TechLint judges.
" Another executable: let g:techlint_command = ['/opt/techlint/techlint', 'lsp']

if exists('g:loaded_techlint') | finish | endif
let g:loaded_techlint = 1

augroup techlint
  autocmd!
  autocmd BufRead,BufNewFile *.technique.yaml,*.equipment.yaml,*.requirements.yaml,techlint.yaml setlocal filetype=yaml.techlint
  autocmd User lsp_setup call lsp#register_server({
        \ 'name': 'techlint',
        \ 'cmd': {info -> get(g:, 'techlint_command', ['techlint', 'lsp'])},
        \ 'root_uri': {info -> lsp#utils#path_to_uri(lsp#utils#find_nearest_parent_file_directory(
        \   lsp#utils#get_buffer_path(), ['techlint.yaml', '.git/']))},
        \ 'allowlist': ['yaml.techlint'],
        \ })
augroup END
