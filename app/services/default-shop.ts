// The settings of a shop that has not been set up yet: neutral rates, one person, the checklist most shops need. All of it editable.
import { shippedCodeKinds } from '../domain/codes/code-kinds.ts';
import { shippedFilingRules } from '../domain/codes/filing-limit.ts';
import { inspectionSchemes } from '../domain/diagnosis/inspection-schemes.ts';
import { usualSupportRange } from '../domain/diagnosis/support-voltage.ts';
import type { Shop } from '../domain/fleet/shop.ts';
import { startingSignInRules } from '../domain/people/sign-in.ts';
import { usualDayForm } from '../domain/shared/show-day.ts';
import { firstTurnaroundSettings } from '../domain/time/turnaround-settings.ts';
/** Checks every shop starts with (common practice, no source); what makes each stale follows from what it vouches for. */
export const startingChecklist: Shop['checklist'] = [
  {
    id: 'road-test',
    title: 'Road test: brakes, steering, no lamp lit, no noise',
    stage: 'verify',
    who: 'technician',
    staleAfter: ['mechanical', 'electrical', 'safety'],
    isActive: true,
  },
  {
    id: 'safety-check',
    title: 'Safety check: lights, wipers, horn, belts, tyres, airbag lamp',
    stage: 'verify',
    who: 'technician',
    staleAfter: ['electrical', 'safety', 'body'],
    isActive: true,
  },
  {
    id: 'keys-proven',
    title: 'Every key starts the engine and works the locks',
    stage: 'verify',
    who: 'technician',
    staleAfter: ['electrical'],
    isActive: true,
  },
  {
    id: 'recall-check',
    title: 'Open recalls looked up, result noted with the day',
    stage: 'verify',
    who: 'manager',
    staleAfter: [],
    isActive: true,
  },
  {
    id: 'owner-data',
    title: 'Earlier owner’s phone, contacts and addresses cleared from the vehicle',
    stage: 'present',
    who: 'sales',
    staleAfter: ['electrical'],
    isActive: true,
  },
  {
    id: 'cleaned',
    title: 'Cleaned inside and out',
    stage: 'present',
    who: 'sales',
    staleAfter: ['mechanical', 'electrical', 'body', 'interior'],
    isActive: true,
  },
  {
    id: 'photographed',
    title: 'Photographed',
    stage: 'present',
    who: 'sales',
    staleAfter: ['body', 'interior'],
    isActive: true,
  },
];

export const defaultShop: Shop = {
  dealer: {
    name: 'Name of the dealer',
    address: '',
    phone: '',
    market: 'other',
    currency: 'USD',
    distanceUnit: 'mi',
    dayForm: usualDayForm,
    paper: 'letter',
    paperName: 'Title',
    buyerNotice: '',
    showsPriceInWindow: true,
  },
  rates: {
    labourCentsPerHour: 0,
    fundingRatePpm: 0,
    dayCount: 'actual-365',
    overheadCentsPerDay: 0,
    countsFirstDay: false,
  },
  people: [{ id: 'manager', name: 'Manager', role: 'manager', labourCentsPerHour: null, isActive: true }],
  checklist: startingChecklist,
  rulePacks: [],
  fundingPlans: [],
  saleTax: { kind: 'none' },
  selling: { retailCents: null, tradeCents: null, daysToSell: null, daysToTrade: null },
  calendar: { workDays: [1, 2, 3, 4, 5], minutesPerDay: 480, holidays: [] },
  turnaround: firstTurnaroundSettings,
  ageingBands: [30, 60, 90],
  valueLoss: [],
  inspection: { chosenId: null, schemes: [...inspectionSchemes] },
  supportRanges: [usualSupportRange],
  codeKinds: [...shippedCodeKinds],
  filingRules: [...shippedFilingRules],
  daysUntilCodesAreDestroyed: 30,
  signIn: startingSignInRules,
  sample: null,
};
