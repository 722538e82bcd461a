// What the screen offers to a role is what the main process lets it do: no dead buttons, nothing hidden that is allowed.
import { describe, expect, it } from 'vitest';
import { roleSchema } from '../../../../app/domain/fleet/shop.ts';
import { rightsOf } from '../../../../app/domain/people/role-rights.ts';
import { sheetKindSchema } from '../../../../app/domain/sheets/sheet.ts';
import { factListSchema } from '../../../../app/domain/vehicle/change.ts';
import {
  mayDecide,
  mayPrint,
  mayPut,
  mayRemove,
  maySeeCodes,
  maySeePartPrices,
  maySet,
} from '../../../../renderer/screens/vehicle/may-change.ts';

const sections = ['identity', 'purchase', 'arrival', 'targets', 'sale'] as const;

describe.each(roleSchema.options)('what is offered to %s', (role) => {
  const rights = rightsOf(role);

  it('are the lists it may write in and remove from', () => {
    expect(factListSchema.options.filter((list) => mayPut(role, list))).toEqual(
      factListSchema.options.filter((list) => rights.puts.includes(list)),
    );
    expect(factListSchema.options.filter((list) => mayRemove(role, list))).toEqual(
      factListSchema.options.filter((list) => rights.removes.includes(list)),
    );
  });

  it('are the sections it may set', () => {
    expect(sections.filter((section) => maySet(role, section))).toEqual(
      sections.filter((section) => rights.sets.includes(section)),
    );
  });

  it('is deciding, printing and seeing as the main process says', () => {
    expect(mayDecide(role)).toBe(rights.decides);
    expect(maySeeCodes(role)).toBe(rights.seesCodes);
    expect(maySeePartPrices(role)).toBe(rights.seesPartPrices);
    expect(sheetKindSchema.options.filter((kind) => mayPrint(role, kind))).toEqual([...rights.prints]);
  });
});
