return {
  cmd = { 'storyrod', 'server' },
  filetypes = { 'framing' },
  root_markers = { 'storyrod.toml', '.git' },
}
