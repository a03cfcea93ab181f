-- A real editor's session, headless: opens a flawed file, waits for its diagnostics, hovers over one, edits and undoes, writes what it saw
-- as JSON, quits.
--   nvim --headless -u NONE -i NONE -n -S session.lua
-- Leaves with status 0 when all went well, else 1 with the reason under "problem" in the result.
-- Environment: TECHLINT_CMD     the server's command line, parts separated by a unit separator (\x1f) or, where there is none, one executable
--              TECHLINT_LUA     the folder that holds techlint.lua
--              TECHLINT_FILE    the file to open
--              TECHLINT_RESULT  where to write the JSON

local result = { ok = false, version = tostring(vim.version().major) .. '.' .. vim.version().minor }

local function finish(problem)
  result.problem = problem
  result.ok = problem == nil
  local ok, text = pcall(vim.fn.json_encode, result)
  vim.fn.writefile({ ok and text or '{"ok":false}' }, vim.env.TECHLINT_RESULT)
  vim.cmd(problem == nil and 'qall!' or 'cquit!')
end

local function run()
  package.path = vim.env.TECHLINT_LUA .. '/?.lua;' .. package.path
  local cmd = vim.split(vim.env.TECHLINT_CMD, '\31', { plain = true })
  if #cmd == 1 then cmd = { cmd[1], 'lsp' } end
  require('techlint').setup({ cmd = cmd })
  vim.cmd('edit ' .. vim.fn.fnameescape(vim.env.TECHLINT_FILE))

  local function diagnostics() return vim.diagnostic.get(0) end

  if not vim.wait(20000, function() return #diagnostics() > 0 end, 20) then return 'no diagnostic came' end
  result.diagnostics = {}
  for _, found in ipairs(diagnostics()) do
    table.insert(result.diagnostics, {
      line = found.lnum, column = found.col, end_line = found.end_lnum, end_column = found.end_col,
      severity = found.severity, source = found.source, message = found.message,
      code = found.code or (found.user_data and found.user_data.lsp and found.user_data.lsp.code),
    })
  end

  local client
  for _, running in pairs(vim.lsp.get_active_clients()) do client = running end
  if not client then return 'no client runs' end
  result.server = client.server_capabilities and (client.server_capabilities.hoverProvider and 'hovers' or 'does not hover') or 'unknown'
  result.offset_encoding = client.offset_encoding

  local first = diagnostics()[1]
  vim.api.nvim_win_set_cursor(0, { first.lnum + 1, first.col })
  local answers = vim.lsp.buf_request_sync(0, 'textDocument/hover', vim.lsp.util.make_position_params(0, client.offset_encoding), 20000)
  local answer = answers and answers[client.id]
  if not answer or answer.error then return 'hover was not answered: ' .. vim.inspect(answers) end
  result.hover = answer.result and answer.result.contents and answer.result.contents.value or vim.NIL

  -- An edit of the editor's own making reaches the server, and so does its undoing: the findings are the same again.
  local before = #diagnostics()
  vim.api.nvim_buf_set_lines(0, 0, 0, false, { '# 😀 a comment above' })
  if not vim.wait(20000, function()
    local now = diagnostics()
    return #now == before and now[1].lnum == first.lnum + 1
  end, 20) then
    return 'the diagnostics did not follow the edit'
  end
  vim.cmd('silent undo')
  if not vim.wait(20000, function()
    local now = diagnostics()
    return #now == before and now[1].lnum == first.lnum
  end, 20) then
    return 'the diagnostics did not follow the undoing'
  end

  vim.lsp.stop_client(client.id)
  if not vim.wait(5000, function() return client.is_stopped() end, 20) then return 'the server did not stop' end
  return nil
end

local ok, problem = pcall(run)
finish((not ok) and ('the script failed: ' .. tostring(problem)) or problem)
