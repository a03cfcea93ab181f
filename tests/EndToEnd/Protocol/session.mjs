// The official client library drives one whole session; every message of the server is held against the protocol's own types.
//   node Protocol/session.mjs EXECUTABLE WORKSPACE FILE CLIENT
// CLIENT: full (offers all), utf8 (offers UTF-8 positions), bare (offers nothing and never answers the server's requests).
// Prints JSON: what was asked, what came back in short, every fault.
import { spawn } from 'node:child_process';
import { readFileSync, readdirSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { createProtocolConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver-protocol/node.js';
import { createValidation } from './validation.mjs';

const [executable, workspace, file, client] = process.argv.slice(2);
const validation = createValidation();
const answers = {};
const uri = pathToFileURL(`${workspace}/${file}`).href;
const text = readFileSync(`${workspace}/${file}`, 'utf8');
const server = spawn(executable, ['lsp'], { cwd: workspace, stdio: ['pipe', 'pipe', 'inherit'] });
const ended = new Promise((resolve) => server.on('exit', resolve));

const asked = new Map();
const reader = new StreamMessageReader(server.stdout);
const writer = new StreamMessageWriter(server.stdin);
const write = writer.write.bind(writer);
writer.write = (message) => {
  if (message.method && message.id !== undefined) asked.set(message.id, message.method);
  return write(message);
};
const listen = reader.listen.bind(reader);
reader.listen = (callback) => listen((message) => {
  if (message.jsonrpc !== '2.0') validation.faults.push(`not JSON-RPC 2.0: ${JSON.stringify(message)}`);
  if (message.method) validation.sent(message.method, message.params);
  else if (message.error) {
    if (!Number.isInteger(message.error.code) || typeof message.error.message !== 'string') validation.faults.push(`error without code or message: ${JSON.stringify(message)}`);
  } else validation.result(asked.get(message.id), message.result);
  callback(message);
});

const connection = createProtocolConnection(reader, writer);
const diagnostics = [];
let published = 0;
connection.onNotification('textDocument/publishDiagnostics', (params) => {
  if (params.uri !== uri) return;
  diagnostics.splice(0, diagnostics.length, ...params.diagnostics);
  published++;
});
connection.onNotification('$/progress', () => {});
connection.onNotification('window/logMessage', () => {});
if (client !== 'bare') {
  connection.onRequest('client/registerCapability', () => null);
  connection.onRequest('window/workDoneProgress/create', () => null);
  connection.onRequest('workspace/configuration', (params) => params.items.map(() => null));
} else {
  // A client that never answers.
  for (const method of ['client/registerCapability', 'window/workDoneProgress/create', 'workspace/configuration']) connection.onRequest(method, () => new Promise(() => {}));
}
connection.listen();

const timeout = (promise, what) => Promise.race([promise, new Promise((_, reject) => setTimeout(() => reject(new Error(`${what}: no answer`)), 30000).unref())]);
const ask = async (method, params) => {
  try {
    const result = await timeout(connection.sendRequest(method, params), method);
    answers[method] = result === null ? 'null' : Array.isArray(result) ? `${result.length} items` : result.items ? `${result.items.length} items` : Object.keys(result).join(' ');
    return result;
  } catch (fault) {
    answers[method] = `error ${fault.code ?? ''} ${fault.message}`;
    return undefined;
  }
};
const until = async (holds, what) => {
  const end = Date.now() + 30000;
  while (!holds()) {
    if (Date.now() > end) throw new Error(what);
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
};

const everything = {
  general: client === 'utf8' ? { positionEncodings: ['utf-8', 'utf-16'] } : {},
  workspace: {
    applyEdit: true, configuration: true, workspaceFolders: true, didChangeWatchedFiles: { dynamicRegistration: true },
    workspaceEdit: { documentChanges: true }, symbol: {}, diagnostics: { refreshSupport: true }, inlayHint: { refreshSupport: true }, codeLens: { refreshSupport: true },
  },
  window: { workDoneProgress: true },
  textDocument: {
    synchronization: { didSave: true }, publishDiagnostics: { relatedInformation: true, tagSupport: { valueSet: [1, 2] }, versionSupport: true, codeDescriptionSupport: true, dataSupport: true },
    hover: { contentFormat: ['markdown', 'plaintext'] }, completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown'] }, contextSupport: true },
    signatureHelp: {}, definition: { linkSupport: true }, references: {}, documentHighlight: {}, rename: { prepareSupport: true },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true }, foldingRange: {}, selectionRange: {}, inlayHint: {}, codeLens: {},
    semanticTokens: { requests: { full: true, range: true }, tokenTypes: [], tokenModifiers: [], formats: ['relative'] },
    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix', 'refactor', 'source.fixAll'] } }, isPreferredSupport: true, dataSupport: true },
    formatting: {}, rangeFormatting: {}, documentLink: {}, diagnostic: { relatedDocumentSupport: true },
  },
};

const folder = { uri: pathToFileURL(workspace).href, name: 'workspace' };
try {
  const initialized = await ask('initialize', {
    processId: process.pid, rootUri: folder.uri, workspaceFolders: client === 'bare' ? null : [folder], capabilities: client === 'bare' ? {} : everything,
  });
  connection.sendNotification('initialized', {});
  const has = initialized.capabilities;
  connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'yaml', version: 1, text } });
  if (client === 'bare' || !has.diagnosticProvider) await until(() => published > 0, 'no diagnostics came');
  const report = has.diagnosticProvider ? await ask('textDocument/diagnostic', { textDocument: { uri } }) : undefined;
  const found = report?.items ?? diagnostics;
  const range = found[0].range;
  const at = { textDocument: { uri }, position: range.start };
  const whole = { start: { line: 0, character: 0 }, end: { line: text.split('\n').length - 1, character: 0 } };
  const lineOf = (piece) => text.split('\n').findIndex((line) => line.includes(piece));
  const onProbe = { textDocument: { uri }, position: { line: lineOf('probe: '), character: text.split('\n')[lineOf('probe: ')].indexOf('probe: ') + 8 } };

  if (has.diagnosticProvider?.workspaceDiagnostics) await ask('workspace/diagnostic', { previousResultIds: [], workDoneToken: 'w1' });
  if (has.hoverProvider) for (const place of [at, onProbe]) await ask('textDocument/hover', place);
  if (has.completionProvider) for (const place of [at, onProbe, { textDocument: { uri }, position: { line: 0, character: 0 } }]) await ask('textDocument/completion', { ...place, context: { triggerKind: 1 } });
  if (has.signatureHelpProvider) await ask('textDocument/signatureHelp', onProbe);
  if (has.definitionProvider) await ask('textDocument/definition', onProbe);
  if (has.referencesProvider) await ask('textDocument/references', { ...onProbe, context: { includeDeclaration: true } });
  if (has.documentHighlightProvider) await ask('textDocument/documentHighlight', onProbe);
  if (has.renameProvider) {
    await ask('textDocument/prepareRename', onProbe);
    await ask('textDocument/rename', { ...onProbe, newName: 'renamed-probe' });
  }
  if (has.documentSymbolProvider) await ask('textDocument/documentSymbol', { textDocument: { uri } });
  if (has.workspaceSymbolProvider) await ask('workspace/symbol', { query: '' });
  if (has.foldingRangeProvider) await ask('textDocument/foldingRange', { textDocument: { uri } });
  if (has.selectionRangeProvider) await ask('textDocument/selectionRange', { textDocument: { uri }, positions: [range.start, onProbe.position] });
  if (has.semanticTokensProvider) {
    await ask('textDocument/semanticTokens/full', { textDocument: { uri } });
    if (has.semanticTokensProvider.range) await ask('textDocument/semanticTokens/range', { textDocument: { uri }, range: whole });
  }
  if (has.inlayHintProvider) await ask('textDocument/inlayHint', { textDocument: { uri }, range: whole });
  if (has.codeLensProvider) {
    const lenses = await ask('textDocument/codeLens', { textDocument: { uri } });
    if (has.codeLensProvider.resolveProvider && lenses?.length) await ask('codeLens/resolve', lenses[0]);
  }
  if (has.codeActionProvider) {
    for (const only of [undefined, ['quickfix'], ['source.fixAll'], ['refactor']]) {
      await ask('textDocument/codeAction', { textDocument: { uri }, range, context: { diagnostics: found.slice(0, 1), only } });
    }
  }
  if (has.documentFormattingProvider) await ask('textDocument/formatting', { textDocument: { uri }, options: { tabSize: 2, insertSpaces: true } });
  if (has.documentRangeFormattingProvider) await ask('textDocument/rangeFormatting', { textDocument: { uri }, range, options: { tabSize: 2, insertSpaces: true } });
  if (has.documentLinkProvider) await ask('textDocument/documentLink', { textDocument: { uri } });

  // What does not exist is refused by the protocol's own number.
  const unknown = await ask('textDocument/noSuchThing', {});
  if (unknown !== undefined || !answers['textDocument/noSuchThing'].startsWith('error -32601')) validation.faults.push(`unknown method: ${answers['textDocument/noSuchThing']}`);

  connection.sendNotification('textDocument/didChange', {
    textDocument: { uri, version: 2 }, contentChanges: [{ range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, text: '# é😀\n' }],
  });
  if (has.documentSymbolProvider) await ask('textDocument/documentSymbol', { textDocument: { uri } });
  connection.sendNotification('textDocument/didSave', { textDocument: { uri } });
  connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
  await ask('shutdown');
  connection.sendNotification('exit');
  answers.exit = await timeout(ended, 'exit');
  answers.capabilities = Object.keys(has).sort().join(' ');
  answers.positions = has.positionEncoding ?? 'utf-16';
} catch (fault) {
  validation.faults.push(`the session broke off: ${fault.message}`);
  server.kill();
}

process.stdout.write(JSON.stringify({ answers, messages: Object.fromEntries(validation.seen), faults: validation.faults }, null, 1) + '\n');
process.exit(0);
