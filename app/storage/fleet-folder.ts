// What lies where in a fleet folder. Paths inside it are written with '/' everywhere, in backups and messages too.
import { mkdir, readdir, stat } from 'node:fs/promises';
import { basename, isAbsolute, join, relative } from 'node:path';
import { identifierSchema } from '../domain/shared/identifier.ts';
import { systemCode } from './storage-problem.ts';

export const shopFile = 'shop.json';
export const vehiclesFolder = 'vehicles';
export const quarantineFolder = 'quarantine';
export const backupsFolder = 'backups';
export const withdrawnFolder = 'withdrawn';
export const lockFile = 'in-use.json';

export function vehicleFile(id: string): string {
  return `${vehiclesFolder}/${id}.json`;
}

/** The id that a vehicle's file name claims, or null when no id of this program can have that name. */
export function idFromFile(path: string): string | null {
  const id = basename(path).replace(/\.json$/, '');
  return identifierSchema.safeParse(id).success ? id : null;
}

/** The vehicle whose record has this path; null for every other path. */
export function vehicleIdOf(path: string): string | null {
  const id = idFromFile(path);
  return id !== null && path === vehicleFile(id) ? id : null;
}

export function pathIn(folder: string, path: string): string {
  return join(folder, ...path.split('/'));
}

export async function makeSubfolders(folder: string): Promise<void> {
  for (const name of [vehiclesFolder, quarantineFolder, backupsFolder, withdrawnFolder]) {
    await mkdir(join(folder, name), { recursive: true });
  }
}

/** Names in a folder; none when there is no such folder. */
export async function namesIn(folder: string): Promise<string[]> {
  try {
    return (await readdir(folder)).sort();
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return [];
    throw error;
  }
}

/** True when this looks like a fleet folder: it has the shop's settings or one of the folders this program makes. */
export async function isFleetFolder(folder: string): Promise<boolean> {
  const names = await namesIn(folder);
  return [shopFile, vehiclesFolder, quarantineFolder, backupsFolder].some((name) => names.includes(name));
}

export async function isFolder(path: string): Promise<boolean> {
  try {
    return (await stat(path)).isDirectory();
  } catch (error) {
    if (['ENOENT', 'ENOTDIR'].includes(systemCode(error) ?? '')) return false;
    throw error;
  }
}

/** True for the folder itself too. By the names alone: links are not followed. */
export function isInside(folder: string, parent: string): boolean {
  const way = relative(parent, folder);
  return way === '' || (!way.startsWith('..') && !isAbsolute(way));
}
