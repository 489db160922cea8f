import { join } from 'node:path';

import { preview, type Plugin, type PreviewServer } from 'vite';

import { SAFETY_HEADERS } from './policy.ts';

/** The address is fixed: a browser keeps the log of shots by the address that wrote it. */
export const HOST = '127.0.0.1';
export const PORT = 4173;

/**
 * Serves the built page for a browser on this computer.
 *
 * @param root the folder of package.json
 * @param port for tests; 0 takes any free one
 * @throws Error that says what to do when the port is taken
 */
export async function serveForBrowser(root: string, port = PORT): Promise<PreviewServer> {
  try {
    return await preview({
      configFile: false,
      root,
      base: './',
      logLevel: 'warn',
      plugins: [oneAddress],
      build: { outDir: join(root, 'dist/renderer') },
      preview: {
        host: HOST,
        port,
        strictPort: true,
        open: false,
        cors: false,
        headers: { ...SAFETY_HEADERS },
      },
    });
  } catch (error) {
    if (!(error instanceof Error) || !error.message.includes('already in use')) throw error;
    throw new Error(
      `Port ${port} is taken. If Loud Gym is running already, it is at http://${HOST}:${port}/ . ` +
        'If not, close the program that uses the port and run "npm start" again; ' +
        'at another port the browser would not find your shots.',
      { cause: error },
    );
  }
}

/** Where the served page is. */
export function addressOf({ httpServer }: PreviewServer): string {
  const address = httpServer.address();
  if (!address || typeof address === 'string') throw new Error('The server has ended.');
  return `http://${address.address}:${address.port}/`;
}

/** Lets Ctrl+C end the server, and with it this program, as a thing that went well. */
export function endOnInterrupt(server: PreviewServer): void {
  process.once('SIGINT', () => void server.close().finally(() => process.exit(0)));
}

/** To a browser, `localhost` is another place with a log of its own: send it on to the one address. */
const oneAddress: Plugin = {
  name: 'one-address',
  configurePreviewServer({ middlewares }) {
    middlewares.use((request, response, next) => {
      const [, port] = /^localhost(:\d+)?$/i.exec(request.headers.host ?? '') ?? [];
      if (port === undefined) return next();
      response.writeHead(307, { Location: `http://${HOST}${port}${request.url ?? '/'}` }).end();
    });
  },
};
