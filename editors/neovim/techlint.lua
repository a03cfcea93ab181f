-- Starts `techlint lsp` for the files that TechLint judges. Needs Neovim 0.7 or newer and nothing else.
-- Usage: require('techlint').setup() or require('techlint').setup({ cmd = { '/path/to/techlint', 'lsp' } })

local M = {}

local endings = { '%.technique%.yaml$', '%.equipment%.yaml$', '%.requirements%.yaml$' }
local clients = {} -- by workspace root: one server for each

local function is_ours(path)
  if vim.fn.fnamemodify(path, ':t') == 'techlint.yaml' then return true end
  for _, ending in ipairs(endings) do
    if path:match(ending) then return true end
  end
  return false
end

-- The nearest folder upwards that holds techlint.yaml, else the file's own folder.
local function root_of(path)
  local settings = vim.fn.findfile('techlint.yaml', vim.fn.fnameescape(vim.fn.fnamemodify(path, ':p:h')) .. ';')
  return vim.fn.fnamemodify(settings ~= '' and settings or path, ':p:h')
end

function M.attach(buffer, options)
  local path = vim.api.nvim_buf_get_name(buffer)
  if path == '' or not is_ours(path) then return end
  local root = root_of(path)
  local id = clients[root]
  if not id or not vim.lsp.get_client_by_id(id) then
    id = vim.lsp.start_client({
      name = 'techlint',
      cmd = options.cmd or { 'techlint', 'lsp' },
      root_dir = root,
      workspace_folders = { { uri = vim.uri_from_fname(root), name = vim.fn.fnamemodify(root, ':t') } },
      on_attach = options.on_attach,
    })
    clients[root] = id
  end
  if id then vim.lsp.buf_attach_client(buffer, id) end
end

function M.setup(options)
  options = options or {}
  local group = vim.api.nvim_create_augroup('techlint', { clear = true })
  vim.api.nvim_create_autocmd({ 'BufReadPost', 'BufNewFile' }, {
    group = group,
    pattern = { '*.technique.yaml', '*.equipment.yaml', '*.requirements.yaml', 'techlint.yaml' },
    callback = function(event) M.attach(event.buf, options) end,
  })
  -- Files that were open before.
  for _, buffer in ipairs(vim.api.nvim_list_bufs()) do
    if vim.api.nvim_buf_is_loaded(buffer) then M.attach(buffer, options) end
  end
end

return M
