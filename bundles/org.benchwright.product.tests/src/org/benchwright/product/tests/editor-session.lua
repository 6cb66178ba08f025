-- A short sitting in a real editor with the language server: what it gets is written to a file, a line for each thing.
local out = io.open(vim.env.SITTING_OUT, 'w')
local function say(what, value)
  out:write(what .. '=' .. (type(value) == 'string' and value or vim.fn.json_encode(value)) .. '\n')
  out:flush()
end
local command = vim.fn.json_decode(vim.env.SITTING_COMMAND)
vim.cmd('edit ' .. vim.env.SITTING_FILE)
local buffer = vim.api.nvim_get_current_buf()
local client = vim.lsp.start_client({ cmd = command, root_dir = vim.env.SITTING_FOLDER, name = 'benchwright' })
vim.lsp.buf_attach_client(buffer, client)

local function codes()
  local found = vim.tbl_map(function(d) return d.code or (d.user_data and d.user_data.lsp and d.user_data.lsp.code) or '?' end, vim.diagnostic.get(buffer))
  table.sort(found)
  return table.concat(found, ',')
end
local function until_codes(wanted)
  vim.wait(200000, function() return codes() == wanted end, 20)
  say('remarks', codes())
end
local function place(passage, behind)
  for number, line in ipairs(vim.api.nvim_buf_get_lines(buffer, 0, -1, false)) do
    local from, to = line:find(passage, 1, true)
    if from then return { line = number - 1, character = behind and to or from - 1 } end
  end
  error('not there: ' .. passage)
end
local function document() return { uri = vim.uri_from_bufnr(buffer) } end
local function ask(method, parameters)
  local answers = vim.lsp.buf_request_sync(buffer, method, parameters, 120000) or {}
  for _, answer in pairs(answers) do
    if answer.error then return nil, answer.error.message end
    return answer.result
  end
end
local encoding = 'utf-16'

vim.wait(200000, function() return vim.lsp.get_client_by_id(client).initialized end, 20)
until_codes('unknown-lamp')

local range = { start = place('pwer'), ['end'] = place('pwer', true) }
local actions = ask('textDocument/codeAction', { textDocument = document(), range = range, context = { diagnostics = {} } })
say('fix', actions[1].title)
vim.lsp.util.apply_workspace_edit(actions[1].edit, encoding)
until_codes('')

local labels = vim.tbl_map(function(item) return item.label end, ask('textDocument/completion', { textDocument = document(), position = place('expect ', true) }))
say('offers pwr', tostring(vim.tbl_contains(labels, 'pwr')))
say('offers a keyword', tostring(vim.tbl_contains(labels, 'any')))
say('hover', ask('textDocument/hover', { textDocument = document(), position = place('pwr steady') }).contents.value:gsub('\n', ' / '))
local declared = ask('textDocument/definition', { textDocument = document(), position = place('pwr steady') })
say('declared in', vim.fn.fnamemodify(vim.uri_to_fname(declared[1].uri), ':t'))
say('references', #ask('textDocument/references', { textDocument = document(), position = place('pwr steady'), context = { includeDeclaration = true } }))
local symbols = ask('textDocument/documentSymbol', { textDocument = document() })
say('contents', symbols[1].name)
local folded = vim.tbl_map(function(fold) return fold.kind .. ' ' .. fold.startLine .. '-' .. fold.endLine end, ask('textDocument/foldingRange', { textDocument = document() }))
say('folds', table.concat(folded, ','))
say('colours', #ask('textDocument/semanticTokens/full', { textDocument = document() }).data % 5)
local _, refused = ask('textDocument/rename', { textDocument = document(), position = place('pwr steady'), newName = 'flt' })
say('refused', refused ~= nil and 'yes' or 'no')
local renamed = ask('textDocument/rename', { textDocument = document(), position = place('pwr steady'), newName = 'power' })
say('renames in files', vim.tbl_count(renamed.changes))
local edits = ask('textDocument/formatting', { textDocument = document(), options = { tabSize = 4, insertSpaces = true } })
vim.lsp.util.apply_text_edits(edits, buffer, encoding)
say('laid out', vim.api.nvim_buf_get_lines(buffer, 5, 6, false)[1])
say('laid out again', #ask('textDocument/formatting', { textDocument = document(), options = { tabSize = 4, insertSpaces = true } }))
until_codes('')

vim.lsp.stop_client(client)
local gone = vim.wait(60000, function() return vim.lsp.client_is_stopped(client) end, 20)
say('stopped', tostring(gone))
out:close()
vim.cmd('qall!')
