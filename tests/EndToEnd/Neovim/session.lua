-- A real editor's session, headless: opens a flawed file, waits for its diagnostics, hovers over one, edits and undoes, completes a key,
-- applies a fix, writes what it saw as JSON, quits.
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

  -- Complete a key that is half typed, then take it out again.
  local group = vim.fn.search('^component:', 'nw')
  vim.api.nvim_buf_set_lines(0, group, group, false, { '  coat' })
  vim.api.nvim_win_set_cursor(0, { group + 1, 6 })
  local params = vim.lsp.util.make_position_params(0, client.offset_encoding)
  params.position.character = 6
  local offered = vim.lsp.buf_request_sync(0, 'textDocument/completion', params, 20000)
  local list = offered and offered[client.id] and offered[client.id].result or {}
  result.completions = {}
  for _, item in ipairs(list.items or list) do table.insert(result.completions, item.label) end
  vim.api.nvim_buf_set_lines(0, group, group + 1, false, {})

  -- The number back in place, but without its unit: one finding, whose first fix ends it.
  local number = { first.lnum, first.col }
  for _, found in ipairs(diagnostics()) do
    if vim.api.nvim_buf_get_lines(0, found.lnum, found.lnum + 1, false)[1]:sub(found.col + 1, found.col + 5) == '70 mm' then number = { found.lnum, found.col } end
  end
  vim.api.nvim_buf_set_text(0, number[1], number[2], number[1], number[2] + 5, { '20' })
  local function only(code)
    local now = diagnostics()
    return #now == 1 and (now[1].code or (now[1].user_data and now[1].user_data.lsp and now[1].user_data.lsp.code)) == code
  end
  if not vim.wait(20000, function() return only('unit-missing') end, 20) then return 'the missing unit was not found: ' .. vim.inspect(diagnostics()) end
  local range = { start = { line = number[1], character = number[2] }, ['end'] = { line = number[1], character = number[2] + 2 } }
  local actions = vim.lsp.buf_request_sync(0, 'textDocument/codeAction', {
    textDocument = vim.lsp.util.make_text_document_params(), range = range,
    context = { diagnostics = vim.lsp.diagnostic.get_line_diagnostics(0, number[1], nil, client.id), only = { 'quickfix' } },
  }, 20000)
  local fixes = actions and actions[client.id] and actions[client.id].result or {}
  result.fixes = {}
  for _, fix in ipairs(fixes) do table.insert(result.fixes, fix.title) end
  if #fixes == 0 then return 'no fix was offered' end
  vim.lsp.util.apply_workspace_edit(fixes[1].edit, client.offset_encoding)
  if not vim.wait(20000, function() return #diagnostics() == 0 end, 20) then return 'the finding did not go' end

  vim.lsp.stop_client(client.id)
  if not vim.wait(5000, function() return client.is_stopped() end, 20) then return 'the server did not stop' end
  return nil
end

local ok, problem = pcall(run)
finish((not ok) and ('the script failed: ' .. tostring(problem)) or problem)
