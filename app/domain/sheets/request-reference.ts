// The reference of a code request, as it stands on its letter and in the name of the letter's file. Stays the same as long as the request.
import type { CodeRequest } from '../codes/code-request.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import { markAlphabet } from './sheet-mark.ts';

const length = 4;

/** Four characters out of an id. FNV-1a, 32 bits (Fowler, Noll, Vo); it tells requests of one vehicle apart and is no secret. */
export function shortOf(id: string): string {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(id)) hash = Math.imul(hash ^ byte, 0x01000193) >>> 0;
  let short = '';
  for (let place = 0; place < length; place += 1) {
    short += markAlphabet[hash % markAlphabet.length] ?? '';
    hash = Math.floor(hash / markAlphabet.length);
  }
  return short;
}

/** 'F-1042/7K3P'. */
export function requestReference({ identity }: Pick<Vehicle, 'identity'>, { id }: Pick<CodeRequest, 'id'>): string {
  return `${identity.stockNumber}/${shortOf(id)}`;
}
