-- Drives Neovim's own language client against "driploop editor" and prints what
-- it got. Called as: nvim --headless -u NONE -l is newer than Debian's, so -S.
local program, file = vim.env.DRIPLOOP, vim.env.RECORD
vim.cmd("edit " .. file)
local buffer = vim.api.nvim_get_current_buf()
local id = vim.lsp.start_client({ name = "driploop", cmd = { program, "editor" }, root_dir = vim.fn.getcwd() })
vim.lsp.buf_attach_client(buffer, id)
local function say(...) io.stdout:write(table.concat({ ... }, " ") .. "\n") end

assert(vim.wait(20000, function() return #vim.diagnostic.get(buffer) > 0 end, 20), "no diagnostics")
for _, d in ipairs(vim.diagnostic.get(buffer)) do say("diagnostic", d.lnum, d.code or "-") end

local function ask(method, line, column)
  local params = { textDocument = vim.lsp.util.make_text_document_params(buffer), position = { line = line, character = column },
    context = { includeDeclaration = true } }
  local got = vim.lsp.buf_request_sync(buffer, method, params, 20000)
  return got and got[id] and got[id].result
end
say("hover", (ask("textDocument/hover", 8, 2).contents.value:gsub("\n.*", "")))
say("definition", ask("textDocument/definition", 9, 14).range.start.line)
say("references", #ask("textDocument/references", 9, 14))
say("symbols", #vim.lsp.buf_request_sync(buffer, "textDocument/documentSymbol",
  { textDocument = vim.lsp.util.make_text_document_params(buffer) }, 20000)[id].result)

-- Typing a wrong word brings a fault where it stands; taking it back removes it.
vim.api.nvim_buf_set_lines(buffer, 5, 6, false, { "  fuse:     {kind: fuze, rating: 100 A, voltage: 32 V}" })
assert(vim.wait(20000, function()
  local all = vim.diagnostic.get(buffer)
  return #all == 1 and all[1].lnum == 5
end, 20), "the fault is not told")
say("fault", vim.diagnostic.get(buffer)[1].message)
vim.cmd("undo")
assert(vim.wait(20000, function() return #vim.diagnostic.get(buffer) > 1 end, 20), "the fault stays")
local action = vim.lsp.buf_request_sync(buffer, "textDocument/codeAction", {
  textDocument = vim.lsp.util.make_text_document_params(buffer), range = { start = { line = 9, character = 2 }, ["end"] = { line = 9, character = 2 } },
  context = { diagnostics = {} } }, 20000)[id].result[1]
say("action", action.title)
vim.lsp.util.apply_workspace_edit(action.edit, "utf-16")
say("line", vim.api.nvim_buf_get_lines(buffer, 5, 6, false)[1])
vim.cmd("qa!")
