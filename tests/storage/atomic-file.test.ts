// A whole file is replaced or nothing is, and nothing is overwritten by being moved.
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { tempFilePattern, writeFileAtomically } from '../../app/storage/atomic-file.ts';
import { createFile, moveAside } from '../../app/storage/move-aside.ts';
import { problemFromError } from '../../app/storage/storage-problem.ts';
import { tempFolder } from './fleet-fixture.ts';

describe('writing a whole file', () => {
  it('creates it and replaces it, and leaves no temp file', async () => {
    const path = join(await tempFolder(), 'a.json');
    expect(await writeFileAtomically(path, Buffer.from('first'))).toEqual({ ok: true, value: null });
    expect(await writeFileAtomically(path, Buffer.from('second, longer'))).toEqual({ ok: true, value: null });
    expect(await readFile(path, 'utf8')).toBe('second, longer');
    expect(await readdir(join(path, '..'))).toEqual(['a.json']);
  });

  it('writes files larger than one stream chunk whole', async () => {
    const path = join(await tempFolder(), 'a.json');
    const bytes = Buffer.alloc(3_000_001, 'xyz');
    await writeFileAtomically(path, bytes);
    expect((await readFile(path)).equals(bytes)).toBe(true);
  });

  it('does not create a folder that has gone: that may be the mount point of an unplugged drive', async () => {
    const folder = join(await tempFolder(), 'gone');
    const result = await writeFileAtomically(join(folder, 'a.json'), Buffer.from('x'));
    expect(result).toMatchObject({ ok: false, error: { code: 'folder-gone' } });
    await expect(readdir(folder)).rejects.toThrow('ENOENT');
  });

  it('refuses a name that the library would shorten in silence', async () => {
    const folder = await tempFolder();
    const result = await writeFileAtomically(join(folder, `${'n'.repeat(140)}.json`), Buffer.from('x'));
    expect(result).toMatchObject({ ok: false, error: { code: 'unknown' } });
    expect(await readdir(folder)).toEqual([]);
  });

  it('does not replace a folder that has the name of the file', async () => {
    const folder = await tempFolder();
    await mkdir(join(folder, 'a.json'));
    await writeFile(join(folder, 'a.json', 'inside'), 'kept');
    expect(await writeFileAtomically(join(folder, 'a.json'), Buffer.from('x'))).toMatchObject({ ok: false });
    expect(await readFile(join(folder, 'a.json', 'inside'), 'utf8')).toBe('kept');
    expect(await readdir(folder)).toEqual(['a.json']);
  });

  it('knows the temp files of the library by their ending', () => {
    expect(tempFilePattern.test('abcd.json.tmp-1234567890abcdef')).toBe(true);
    expect(tempFilePattern.test('abcd.json')).toBe(false);
    expect(tempFilePattern.test('abcd.json.tmp-short')).toBe(false);
  });
});

describe('putting files where nothing is', () => {
  it('does not overwrite when creating', async () => {
    const path = join(await tempFolder(), 'a');
    await createFile(path, 'first');
    await expect(createFile(path, 'second')).rejects.toThrow('EEXIST');
    expect(await readFile(path, 'utf8')).toBe('first');
  });

  it('takes the first free name when moving, and leaves what has the others', async () => {
    const folder = await tempFolder();
    await mkdir(join(folder, 'to'));
    await writeFile(join(folder, 'to', 'a'), 'there before');
    await writeFile(join(folder, 'from'), 'moved');
    expect(await moveAside(join(folder, 'from'), join(folder, 'to'), ['a', 'b'])).toBe('b');
    expect(await readFile(join(folder, 'to', 'a'), 'utf8')).toBe('there before');
    expect(await readFile(join(folder, 'to', 'b'), 'utf8')).toBe('moved');
  });

  it('leaves no empty file behind when there is nothing to move', async () => {
    const folder = await tempFolder();
    await expect(moveAside(join(folder, 'nothing'), folder, ['a'])).rejects.toThrow('ENOENT');
    expect(await readdir(folder)).toEqual([]);
  });
});

it.each([
  ['ENOSPC', 'no-space'],
  ['EDQUOT', 'no-space'],
  ['EACCES', 'no-permission'],
  ['EPERM', 'no-permission'],
  ['EROFS', 'read-only'],
  ['ENOENT', 'folder-gone'],
  ['ESTALE', 'folder-gone'],
  ['EBUSY', 'busy'],
  ['EMFILE', 'busy'],
  ['EIO', 'unknown'],
])('calls the system error %s %s', (code, expected) => {
  expect(problemFromError(Object.assign(new Error('x'), { code }), 'Writing').code).toBe(expected);
});
