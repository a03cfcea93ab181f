// Starts `techlint lsp` and passes messages; nothing is checked here.
import { workspace, type ExtensionContext } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';

let client: LanguageClient | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  const command = workspace.getConfiguration('techlint').get<string>('command') || 'techlint';
  client = new LanguageClient(
    'techlint',
    'TechLint',
    { command, args: ['lsp'], transport: TransportKind.stdio },
    {
      documentSelector: [
        { scheme: 'file', pattern: '**/*.{technique,equipment,requirements}.yaml' },
        { scheme: 'file', pattern: '**/techlint.yaml' },
      ],
    },
  );
  context.subscriptions.push(client);
  await client.start();
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}
