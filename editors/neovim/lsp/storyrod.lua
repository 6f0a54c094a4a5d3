return {
  cmd = { 'storyrod', 'server' },
  filetypes = { 'framing' },
  root_markers = { 'storyrod.toml', '.git' },
  -- Sheets are shown here, in windows of their own: `lua/storyrod/sheets.lua`. Said twice, since the server asks for
  -- settings only when it has begun.
  init_options = { storyrod = { opensSheets = false } },
  settings = { storyrod = { opensSheets = false } },
}
