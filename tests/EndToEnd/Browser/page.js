// An ordinary browser editor with an ordinary language client: nothing here knows TechLint but the address it connects to.
import { EditorView, basicSetup } from 'codemirror';
import { yaml } from '@codemirror/lang-yaml';
import { lintGutter } from '@codemirror/lint';
import { LSPClient, languageServerExtensions } from '@codemirror/lsp-client';

function transportTo(address) {
  const handlers = new Set();
  const socket = new WebSocket(address);
  socket.onmessage = (event) => handlers.forEach((handler) => handler(event.data.toString()));
  const transport = {
    send: (message) => socket.send(message),
    subscribe: (handler) => handlers.add(handler),
    unsubscribe: (handler) => handlers.delete(handler),
  };
  return new Promise((resolve) => { socket.onopen = () => resolve(transport); });
}

async function open() {
  const { uri, rootUri, text } = await (await fetch('/document')).json();
  const client = new LSPClient({ rootUri, extensions: languageServerExtensions(), timeout: 20000 });
  client.connect(await transportTo(`ws://${location.host}/server`));
  await client.initializing;
  const view = new EditorView({ doc: text, parent: document.getElementById('editor'), extensions: [basicSetup, yaml(), lintGutter(), client.plugin(uri, 'yaml')] });
  const offsetOf = (place) => view.state.doc.line(place.line + 1).from + place.character;

  // The client has no code actions of its own; these few lines are all that one needs.
  window.session = {
    view,
    text: () => view.state.doc.toString(),
    select: (piece, inside) => {
      const at = view.state.doc.toString().indexOf(piece) + inside;
      view.dispatch({ selection: { anchor: at }, effects: EditorView.scrollIntoView(at, { y: 'center' }) });
      view.focus();
      return view.coordsAtPos(at);
    },
    fix: async (range, diagnostics) => {
      client.sync();
      const actions = await client.request('textDocument/codeAction', { textDocument: { uri }, range, context: { diagnostics, only: ['quickfix'] } });
      const edit = actions[0].edit;
      const edits = edit.documentChanges ? edit.documentChanges.flatMap((change) => change.edits) : edit.changes[uri];
      view.dispatch({ changes: edits.map((one) => ({ from: offsetOf(one.range.start), to: offsetOf(one.range.end), insert: one.newText })) });
      return actions.map((action) => action.title);
    },
    close: async () => {
      await client.request('shutdown', null);
      client.notification('exit', null);
    },
  };
}

open().catch((fault) => { document.title = `failed: ${fault.message}`; });
