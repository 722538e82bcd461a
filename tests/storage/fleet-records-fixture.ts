// Invented records for the storage and fault tests. No test runner in here: a process of its own uses it too.

import { shippedCodeKinds } from '../../app/domain/codes/code-kinds.ts';
import { shippedFilingRules } from '../../app/domain/codes/filing-limit.ts';
import type { Shop } from '../../app/domain/fleet/shop.ts';
import { startingSignInRules } from '../../app/domain/people/sign-in.ts';
import { firstTurnaroundSettings } from '../../app/domain/time/turnaround-settings.ts';
import { noTargets } from '../../app/domain/vehicle/purchase.ts';
import { newVehicle } from '../../app/domain/vehicle/take-in.ts';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';

export function aVehicle(id: string, keyTag = 'K1'): Vehicle {
  return newVehicle(
    id,
    { by: 'person-1', at: '2026-02-01T08:00:00.000Z' },
    {
      identity: {
        stockNumber: `S-${id}`,
        vin: '100AB54C450110341',
        vinReason: '',
        modelYear: 2019,
        make: 'Merrowick',
        model: 'Hearth',
        body: 'Estate',
        colour: 'Grey',
        drive: 'combustion',
        odometer: { reading: 81_200, unit: 'km' },
        location: 'Row 2',
        keyTag,
      },
      purchase: {
        boughtOn: '2026-01-31',
        source: 'Auction',
        priceCents: 640_000,
        feesCents: 12_000,
        transportCents: 8_000,
        paperKind: 'Title',
        paperExpectedOn: null,
        paperReceivedOn: null,
        keysReceived: 1,
        fundingPlanId: null,
      },
      arrival: { expectedOn: null, arrivedOn: '2026-02-01' },
      targets: noTargets,
    },
  );
}

export function aShop(name = 'Invented Motors'): Shop {
  return {
    dealer: {
      name,
      address: '1 Nowhere Road',
      phone: '',
      market: 'US',
      currency: 'USD',
      distanceUnit: 'mi',
      dayForm: 'day-month',
      paper: 'letter',
      paperName: 'Title',
      buyerNotice: '',
      showsPriceInWindow: true,
    },
    rates: {
      labourCentsPerHour: 9_000,
      fundingRatePpm: 80_000,
      dayCount: 'actual-365',
      overheadCentsPerDay: 900,
      countsFirstDay: true,
    },
    people: [{ id: 'person-1', name: 'Ada Invented', role: 'manager', labourCentsPerHour: null, isActive: true }],
    checklist: [],
    rulePacks: [],
    fundingPlans: [],
    saleTax: { kind: 'none' },
    selling: { retailCents: null, tradeCents: null, daysToSell: null, daysToTrade: null },
    calendar: { workDays: [1, 2, 3, 4, 5], minutesPerDay: 480, holidays: [] },
    turnaround: firstTurnaroundSettings,
    ageingBands: [30, 60, 90],
    valueLoss: [],
    inspection: { chosenId: null, schemes: [] },
    supportRanges: [],
    codeKinds: [...shippedCodeKinds],
    filingRules: [...shippedFilingRules],
    daysUntilCodesAreDestroyed: 30,
    signIn: startingSignInRules,
    sample: null,
  };
}
