// The rights of a role as far as signing in has opened them: nothing at a locked desk, no money where that waits for signing in. Pure.
import type { SheetKind } from '../sheets/sheet.ts';
import type { FactList, Section } from '../vehicle/change.ts';
import { type Rights, rightsOf } from './role-rights.ts';
import type { Access } from './sign-in.ts';

const noRights: Rights = {
  seesMoney: false,
  seesForecast: false,
  seesPartPrices: false,
  seesCodes: false,
  notesCodeLife: false,
  readsAttachmentsFor: [],
  addsDocuments: false,
  puts: [],
  removes: [],
  sets: [],
  decides: false,
  prints: [],
  printsOfFleet: [],
};

/** Facts and sections in which an amount is blanked: saved again as they were shown, they would wipe it out. The fee of a code is put back. */
const listsWithMoney: readonly FactList[] = ['otherCosts', 'sublets'];
const sectionsWithMoney: readonly Section[] = ['purchase', 'targets', 'sale'];

/** Sheets of the manager alone on which no amount stands; any other of them is taken to tell of money. */
const ownWithoutMoney: readonly SheetKind[] = ['code-letter'];

function withoutMoney(rights: Rights): Rights {
  const isWithout = (list: FactList) => !listsWithMoney.includes(list);
  const others = [rightsOf('technician'), rightsOf('sales')];
  return {
    ...rights,
    seesMoney: false,
    // What is for the manager alone may be an invoice.
    readsAttachmentsFor: rights.readsAttachmentsFor.filter((readers) => readers !== 'manager'),
    puts: rights.puts.filter(isWithout),
    removes: rights.removes.filter(isWithout),
    sets: rights.sets.filter((section) => !sectionsWithMoney.includes(section)),
    prints: rights.prints.filter(
      (kind) => ownWithoutMoney.includes(kind) || others.some(({ prints }) => prints.includes(kind)),
    ),
    printsOfFleet: rights.printsOfFleet.filter((kind) => others.some((role) => role.printsOfFleet.includes(kind))),
  };
}

/** What of the role's rights holds just now. */
export function rightsWithin(rights: Rights, access: Pick<Access, 'mayWork' | 'seesMoney'>): Rights {
  if (!access.mayWork) return noRights;
  return rights.seesMoney && !access.seesMoney ? withoutMoney(rights) : rights;
}
