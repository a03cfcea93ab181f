// A browser editor against the server over a websocket: sees the finding, hovers, completes, applies a fix, ends clean.
//   node Browser/session.mjs EXECUTABLE WORKSPACE FILE SCREENSHOTS
// Prints what was seen as JSON. All traffic stays on loopback.
import { spawn } from 'node:child_process';
import { createServer } from 'node:http';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { buildSync } from 'esbuild';
import { chromium } from 'playwright-core';
import { WebSocketServer } from 'ws';

const [executable, workspace, file, screenshots, browserPath] = process.argv.slice(2);
const folder = fileURLToPath(new URL('.', import.meta.url));
const uri = pathToFileURL(join(workspace, file)).href;
const page = buildSync({ entryPoints: [join(folder, 'page.js')], bundle: true, write: false, format: 'iife' }).outputFiles[0].text;
const seen = { published: [] };

const http = createServer((request, response) => {
  if (request.url === '/page.js') response.setHeader('content-type', 'text/javascript').end(page);
  else if (request.url === '/document') {
    response.setHeader('content-type', 'application/json')
      .end(JSON.stringify({ uri, rootUri: pathToFileURL(workspace).href, text: readFileSync(join(workspace, file), 'utf8') }));
  } else response.setHeader('content-type', 'text/html').end(readFileSync(join(folder, 'index.html')));
});

// The bridge: one message of the websocket is one framed message of the server.
let server;
const ended = new Promise((resolve) => {
  new WebSocketServer({ server: http, path: '/server' }).on('connection', (socket) => {
    server = spawn(executable, ['lsp'], { cwd: workspace, stdio: ['pipe', 'pipe', 'inherit'] });
    server.on('exit', resolve);
    socket.on('message', (data) => {
      const body = Buffer.from(data.toString(), 'utf8');
      server.stdin.write(`Content-Length: ${body.length}\r\n\r\n`);
      server.stdin.write(body);
    });
    let pending = Buffer.alloc(0);
    server.stdout.on('data', (chunk) => {
      pending = Buffer.concat([pending, chunk]);
      for (;;) {
        const head = pending.indexOf('\r\n\r\n');
        if (head < 0) return;
        const length = Number(/content-length: *(\d+)/i.exec(pending.toString('ascii', 0, head))[1]);
        if (pending.length < head + 4 + length) return;
        const message = pending.toString('utf8', head + 4, head + 4 + length);
        pending = pending.subarray(head + 4 + length);
        const parsed = JSON.parse(message);
        if (parsed.method === 'textDocument/publishDiagnostics' && parsed.params.uri === uri) seen.published.push(parsed.params.diagnostics);
        socket.send(message);
      }
    });
  });
});

await new Promise((resolve) => http.listen(0, '127.0.0.1', resolve));
const profile = mkdtempSync(join(tmpdir(), 'techlint-browser-'));
const browser = await chromium.launchPersistentContext(profile, {
  executablePath: browserPath, headless: true, viewport: { width: 1200, height: 900 },
  args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
});
try {
  const tab = await browser.newPage();
  tab.setDefaultTimeout(30000);
  await tab.goto(`http://127.0.0.1:${http.address().port}/`);
  await tab.waitForFunction(() => window.session || document.title.startsWith('failed'));
  seen.title = await tab.title();

  // The finding: in the margin, and under the very characters.
  const found = async (holds) => tab.waitForFunction(([want]) => (document.querySelectorAll('.cm-lintRange-error').length > 0) === want, [holds]);
  const diagnostic = () => seen.published.at(-1)?.[0];
  await tab.waitForFunction(() => window.session.text().length > 0);
  for (let tries = 0; !diagnostic() && tries < 1000; tries++) await new Promise((resolve) => setTimeout(resolve, 20));
  const line = diagnostic().range.start.line;
  await tab.evaluate((wanted) => {
    const { view } = window.session;
    view.dispatch({ selection: { anchor: view.state.doc.line(wanted + 1).from }, scrollIntoView: true });
  }, line);
  await found(true);
  seen.marked = await tab.locator('.cm-lintRange-error').first().textContent();
  await tab.locator('.cm-lintRange-error').first().hover();
  await tab.locator('.cm-tooltip-lint').first().waitFor();
  seen.tooltip = await tab.locator('.cm-tooltip-lint').first().textContent();
  await tab.screenshot({ path: join(screenshots, 'browser-finding.png') });

  // Hover over a key away from the finding.
  await tab.mouse.move(5, 5);
  const key = await tab.evaluate(() => window.session.select('heat-affected-zone', 4));
  await tab.mouse.move(key.left + 2, key.top + 6, { steps: 4 });
  await tab.locator('.cm-lsp-hover-tooltip, .cm-lsp-documentation').first().waitFor();
  seen.hover = await tab.locator('.cm-lsp-hover-tooltip, .cm-lsp-documentation').first().textContent();
  await tab.screenshot({ path: join(screenshots, 'browser-hover.png') });
  await tab.mouse.move(5, 5);

  // Complete a key as it is typed.
  await tab.evaluate(() => window.session.select('component:', 'component:'.length));
  await tab.keyboard.press('Enter');
  await tab.keyboard.type('  coat', { delay: 30 });
  await tab.locator('.cm-tooltip-autocomplete li').first().waitFor();
  seen.completions = await tab.locator('.cm-tooltip-autocomplete li').allTextContents();
  await tab.screenshot({ path: join(screenshots, 'browser-completion.png') });
  await tab.keyboard.press('Escape');
  for (let back = 0; back < 3; back++) await tab.keyboard.press('Control+z');
  await tab.evaluate((original) => {
    const { view } = window.session;
    view.dispatch({ changes: { from: 0, to: view.state.doc.length, insert: original } });
  }, readFileSync(join(workspace, file), 'utf8'));

  // The fix, and then nothing is left.
  await tab.waitForTimeout(500);
  seen.fixes = await tab.evaluate(([range, diagnostics]) => window.session.fix(range, diagnostics), [diagnostic().range, [diagnostic()]]);
  await found(false);
  for (let tries = 0; seen.published.at(-1).length > 0 && tries < 1000; tries++) await new Promise((resolve) => setTimeout(resolve, 20));
  seen.left = seen.published.at(-1).map((one) => one.code);
  await tab.screenshot({ path: join(screenshots, 'browser-clean.png') });
  await tab.evaluate(() => window.session.close());
  seen.exit = await Promise.race([ended, new Promise((resolve) => setTimeout(() => resolve('did not end'), 10000))]);
} catch (fault) {
  seen.problem = fault.message;
} finally {
  await browser.close();
  server?.kill();
  http.close();
  rmSync(profile, { recursive: true, force: true });
}

delete seen.published;
process.stdout.write(JSON.stringify(seen, null, 1) + '\n');
process.exit(0);
