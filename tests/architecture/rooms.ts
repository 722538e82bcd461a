// Which room of the house may import from which: the table of DEVELOPERS.md as data, and the judgement by it.
import type { Import } from './source-files.ts';

type Allowed = {
  /** Folders or files of the project, by the beginning of their path. */
  readonly from: readonly string[];
  /** Of these only what vanishes at build time. */
  readonly typesFrom?: readonly string[];
  readonly packages: readonly string[];
  readonly node?: boolean;
  /** What to do instead, for whoever meets the refusal. */
  readonly wayOut: string;
};

const page = ['react', 'react-dom', '@tanstack/react-virtual', 'zod'];

/** The first room whose path begins a file's path is the file's room. */
export const rooms: Readonly<Record<string, Allowed>> = {
  'app/domain/': {
    from: ['app/domain/'],
    packages: ['zod'],
    wayOut:
      'The domain is pure: let the caller pass in the clock, random numbers and whatever is read from disk, or move the file to the room that does the reading.',
  },
  'app/contract/': {
    from: ['app/contract/', 'app/domain/'],
    packages: ['zod'],
    wayOut:
      'The contract only describes: compose it from domain schemas; what answers a channel belongs into app/services.',
  },
  'app/storage/': {
    from: ['app/storage/', 'app/domain/'],
    packages: ['zod', 'atomically', 'fflate'],
    node: true,
    wayOut:
      'Storage knows no window, no use case and no page: give it what it needs as an argument, or move the rule into app/domain.',
  },
  'app/printing/': {
    from: ['app/printing/', 'app/domain/sheets/', 'app/domain/shared/'],
    packages: ['pdfkit', 'bwip-js'],
    node: true,
    wayOut: 'Printing draws a finished sheet: put what it would look up into the sheet, in app/domain/sheets.',
  },
  'app/services/': {
    from: ['app/services/', 'app/contract/', 'app/domain/', 'app/storage/', 'app/printing/'],
    packages: ['date-holidays', 'papaparse'],
    node: true,
    wayOut: 'A use case knows no Electron and no page: let app/shell hand in the way out as a function.',
  },
  'app/sheets-command.ts': {
    from: ['app/services/', 'app/domain/', 'app/storage/', 'app/printing/'],
    packages: [],
    node: true,
    wayOut: 'The sheets command runs in plain Node: what needs Electron belongs into app/shell.',
  },
  'app/shell/': {
    from: ['app/shell/', 'app/contract/', 'app/domain/', 'app/storage/', 'app/services/', 'app/printing/'],
    packages: ['electron', 'zod'],
    node: true,
    wayOut:
      'The shell only connects Electron to the program: words and drawing belong into renderer, rules into app/domain.',
  },
  'app/main.ts': {
    from: ['app/shell/', 'app/contract/', 'app/domain/', 'app/storage/', 'app/services/', 'app/printing/'],
    packages: ['electron'],
    node: true,
    wayOut: 'main.ts puts the parts together and does nothing else: move the rest into app/shell.',
  },
  'app/preload.ts': {
    from: ['app/contract/channel-names.ts'],
    typesFrom: ['app/contract/'],
    packages: ['electron'],
    wayOut: 'The preload passes names and plain data on: schemas and rules belong into the main process.',
  },
  'renderer/': {
    from: ['renderer/', 'app/domain/'],
    typesFrom: ['app/contract/'],
    packages: page,
    wayOut:
      'The page asks the main process by a channel of app/contract (renderer/bridge.ts); rules it shares lie in app/domain.',
  },
};

/** Packages that one file alone may load; everybody else uses that file. */
const onlyIn: Readonly<Record<string, string>> = {
  'electron-store': 'app/storage/desk-settings.ts',
  'date-holidays': 'app/services/holiday-commands.ts',
  papaparse: 'app/services/read-list.ts',
};

export function roomOf(file: string): string | null {
  return Object.keys(rooms).find((room) => file.startsWith(room)) ?? null;
}

function screenOf(place: string): string | null {
  return /^renderer\/screens\/([^/]+)\//.exec(place)?.[1] ?? null;
}

function packageOf(specifier: string): string {
  return specifier.split('/', specifier.startsWith('@') ? 2 : 1).join('/');
}

function begins(target: string, places: readonly string[] | undefined): boolean {
  return places?.some((place) => target.startsWith(place)) ?? false;
}

function fileObjection({ file, target, isTypeOnly }: Import, room: Allowed): string | null {
  if (target === null) return null;
  const [own, other] = [screenOf(file), screenOf(target)];
  if (own !== null && other !== null && own !== other) {
    return 'One screen never imports another. Move what both need to renderer/ui or renderer/state.';
  }
  if (target.startsWith('app/dev/'))
    return 'app/dev only builds, starts and tests the program. The program must not need it.';
  if (begins(target, room.from)) return null;
  if (begins(target, room.typesFrom)) {
    return isTypeOnly ? null : `Only types may come from there (import type). ${room.wayOut}`;
  }
  return room.wayOut;
}

function packageObjection({ file, specifier }: Import, room: Allowed): string | null {
  if (specifier.startsWith('node:')) return room.node ? null : room.wayOut;
  const name = packageOf(specifier);
  const home = onlyIn[name];
  if (home !== undefined) return file === home ? null : `Only ${home} loads ${name}. Use what it exports.`;
  return room.packages.includes(name) ? null : room.wayOut;
}

/** Why an import may not be, with the way out; null when it may. */
export function objection(found: Import): string | null {
  const room = rooms[roomOf(found.file) ?? ''];
  const why = room
    ? found.target === null
      ? packageObjection(found, room)
      : fileObjection(found, room)
    : 'This file lies in no room of the house. Put it into one, or add the room to DEVELOPERS.md.';
  return why === null ? null : `${found.file}:${found.line} must not import ${found.specifier}. ${why}`;
}
