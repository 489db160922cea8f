/* The log's files in the private file system, from outside SQLite. Only while no worker holds them. */

/** Where a file of the pool begins to be the database's; before it stands the pool's own header. */
const HEADER = 4096;
const MAGIC = 'SQLite format 3\0';

async function poolFiles(): Promise<FileSystemFileHandle[]> {
  const root = await navigator.storage.getDirectory();
  const folder = await (await root.getDirectoryHandle('loud-gym')).getDirectoryHandle('.opaque');
  const files: FileSystemFileHandle[] = [];
  for await (const handle of folder.values()) {
    if (handle.kind === 'file') files.push(handle);
  }
  return files;
}

/** One fingerprint of all data in the pool. */
export async function fingerprint(): Promise<string> {
  const files = await Promise.all((await poolFiles()).map((handle) => handle.getFile()));
  const prints = files.filter((file) => file.size > HEADER).map(fingerprintOf);
  return (await Promise.all(prints)).toSorted().join('\n');
}

async function fingerprintOf(file: File): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', await file.arrayBuffer());
  return `${file.name} ${new Uint8Array(digest).join('.')}`;
}

/** Writes bytes into the database's file, at an offset the database would use. */
export async function overwrite(offset: number, bytes: readonly number[]): Promise<void> {
  const handles = await poolFiles();
  const starts = await Promise.all(
    handles.map(async (handle) => {
      const file = await handle.getFile();
      return file.slice(HEADER, HEADER + MAGIC.length).text();
    }),
  );
  const database = handles[starts.indexOf(MAGIC)];
  if (!database) throw new Error('There is no database among the files.');
  const writing = await database.createWritable({ keepExistingData: true });
  await writing.write({ type: 'write', position: HEADER + offset, data: new Uint8Array(bytes) });
  await writing.close();
}
