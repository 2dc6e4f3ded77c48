// Drives yaml-language-server over its standard streams with a record and the
// schema that driploop prints, and prints what it says of the record.
const { spawn } = require('child_process');
const [server, file, text] = process.argv.slice(2);
const child = spawn(process.execPath, [server, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
let buffer = Buffer.alloc(0), next = 1;
const waiting = new Map();
function send(message) {
  const body = JSON.stringify({ jsonrpc: '2.0', ...message });
  child.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
}
function ask(method, params) {
  return new Promise((resolve) => { waiting.set(next, resolve); send({ id: next++, method, params }); });
}
let told;
const diagnostics = new Promise((resolve) => { told = resolve; });
child.stdout.on('data', (part) => {
  buffer = Buffer.concat([buffer, part]);
  for (;;) {
    const end = buffer.indexOf('\r\n\r\n');
    if (end < 0) return;
    const size = Number(/Content-Length: (\d+)/.exec(buffer.slice(0, end).toString())[1]);
    if (buffer.length < end + 4 + size) return;
    const message = JSON.parse(buffer.slice(end + 4, end + 4 + size));
    buffer = buffer.slice(end + 4 + size);
    if (message.method === 'workspace/configuration') {
      send({ id: message.id, result: message.params.items.map((i) => i.section === 'yaml'
        ? { validate: true, hover: true, completion: true, schemaStore: { enable: false } } : null) });
    } else if (message.method === 'textDocument/publishDiagnostics') {
      if (message.params.diagnostics.length) told(message.params.diagnostics);
    } else if (message.id !== undefined && message.method) {
      send({ id: message.id, result: null });
    } else if (waiting.has(message.id)) {
      waiting.get(message.id)(message.result);
      waiting.delete(message.id);
    }
  }
});
(async () => {
  const uri = 'file://' + file;
  await ask('initialize', { processId: process.pid, rootUri: null, capabilities: { workspace: { configuration: true } } });
  send({ method: 'initialized', params: {} });
  send({ method: 'textDocument/didOpen', params: { textDocument: { uri, languageId: 'yaml', version: 1, text } } });
  for (const d of await diagnostics) console.log('diagnostic', d.range.start.line, d.message.replace(/\n/g, ' '));
  const textDocument = { uri };
  const at = (mark) => {
    const before = text.slice(0, text.indexOf(mark)), lines = before.split('\n');
    return { line: lines.length - 1, character: lines[lines.length - 1].length };
  };
  const hover = await ask('textDocument/hover', { textDocument, position: at('hull') });
  console.log('hover', JSON.stringify(hover && hover.contents));
  const items = await ask('textDocument/completion', { textDocument, position: at('FRP') });
  console.log('completion', ((items && (items.items || items)) || []).map((i) => i.label).join(' '));
  child.kill();
})();
