// Setup: the dealer, its rates, people, checklist, money terms and time. Managers change it; others see what holds for everybody, and why no more.
import './setup.css';
import { useEffect } from 'react';
import type { Desk } from '../../../app/contract/views.ts';
import { useDesk } from '../../state/desk-store.ts';
import { goTo } from '../../state/route-store.ts';
import { readShop, shopStore } from '../../state/shop-store.ts';
import { askToSignIn } from '../../state/sign-in-store.ts';
import { useStore } from '../../state/store.ts';
import { roleNames } from '../../text/common.ts';
import { setupText } from '../../text/setup.ts';
import { signInText } from '../../text/sign-in.ts';
import { Button } from '../../ui/button.tsx';
import { EmptyState } from '../../ui/empty-state.tsx';
import { Facts } from '../../ui/facts.tsx';
import { ScreenPurpose } from '../../ui/screen-purpose.tsx';
import { SectionHead } from '../../ui/section-head.tsx';
import { AgeingSection } from './ageing-section.tsx';
import { ArchiveSection } from './archive-section.tsx';
import { CalendarSection } from './calendar-section.tsx';
import { ChecklistSection } from './checklist-section.tsx';
import { CodeKindsSection } from './code-kinds-section.tsx';
import { DealerSection } from './dealer-section.tsx';
import { CodesAfterSaleSection, FilingSection } from './filing-section.tsx';
import { FleetsSection } from './fleets-section.tsx';
import { FundingSection } from './funding-section.tsx';
import { InspectionSection } from './inspection-section.tsx';
import { OwnSecretSection } from './own-secret-section.tsx';
import { PeopleSection } from './people-section.tsx';
import { RatesSection } from './rates-section.tsx';
import { RulePackSection } from './rule-pack-section.tsx';
import { SecretsSection } from './secrets-section.tsx';
import { SellingSection } from './selling-section.tsx';
import { SignInSection } from './sign-in-section.tsx';
import { SupportSection } from './support-section.tsx';
import { TaxSection } from './tax-section.tsx';
import { TurnaroundSection } from './turnaround-section.tsx';
import { ValueLossSection } from './value-loss-section.tsx';
import { OwnVaultSection } from './vault-phrase.tsx';
import { VaultSection } from './vault-section.tsx';

/** What everybody may know of the settings. */
function ForEverybody({ desk }: { readonly desk: Desk }) {
  const { shop } = desk;
  return (
    <>
      <p className="setup-hint">{setupText.onlyManagers}</p>
      <OwnSecretSection desk={desk} />
      <OwnVaultSection desk={desk} />
      {shop !== null && (
        <div className="setup-columns">
          <section className="setup-section">
            <SectionHead title={setupText.sections.dealer} />
            <Facts
              rows={[
                { label: setupText.name, value: shop.dealer.name },
                { label: setupText.address, value: shop.dealer.address },
                { label: setupText.phone, value: shop.dealer.phone },
                { label: setupText.market, value: setupText.markets[shop.dealer.market] },
                { label: setupText.distanceUnit, value: setupText.distanceUnits[shop.dealer.distanceUnit] },
                { label: setupText.dayForm, value: setupText.dayForms[shop.dealer.dayForm] },
                { label: setupText.paper, value: setupText.papers[shop.dealer.paper] },
              ]}
            />
          </section>
          <section className="setup-section">
            <SectionHead title={setupText.sections.checklist} />
            <Facts
              rows={shop.checklist
                .filter((check) => check.isActive)
                .map((check) => ({
                  label: `${setupText.who} ${roleNames[check.who]}`,
                  value: check.title,
                  key: check.id,
                }))}
            />
          </section>
        </div>
      )}
    </>
  );
}

function Sections({ desk }: { readonly desk: Desk }) {
  const state = useStore(shopStore);
  const personId = desk.person.id;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another person at the desk may see more or less.
  useEffect(() => void readShop(), [personId, desk.seesMoney]);
  if (!desk.seesMoney)
    return (
      <EmptyState
        sentence={signInText.moneyWaits}
        action={<Button onPress={askToSignIn}>{signInText.signIn}</Button>}
      />
    );
  if (state.view === null)
    return state.trouble === '' ? (
      <p className="quiet">{setupText.reading}</p>
    ) : (
      <div role="alert">
        <EmptyState
          sentence={state.trouble}
          action={<Button onPress={() => void readShop()}>{setupText.tryAgain}</Button>}
        />
      </div>
    );
  const { shop, revision } = state.view;
  const readOnlyReason = desk.readOnlyReason === null ? null : setupText.readOnly(desk.readOnlyReason);
  const section = { state, readOnlyReason };
  const currency = (state.drafts.dealer ?? shop.dealer).currency;
  return (
    <>
      {revision === 0 && <p className="setup-hint is-first">{setupText.newFleet}</p>}
      {readOnlyReason !== null && <p className="setup-hint is-below-nought">{readOnlyReason}</p>}
      <div className="setup-columns">
        <div>
          <DealerSection {...section} kept={shop.dealer} />
          <RatesSection {...section} kept={shop.rates} currency={currency} />
        </div>
        <div>
          <PeopleSection {...section} kept={shop.people} currency={currency} />
          <ChecklistSection {...section} kept={shop.checklist} />
        </div>
      </div>
      <div className="setup-columns">
        <div>
          <TaxSection {...section} kept={shop.saleTax} />
          <SellingSection {...section} kept={shop.selling} currency={currency} />
          <AgeingSection {...section} kept={shop.ageingBands} />
          <ValueLossSection {...section} kept={shop.valueLoss} />
          <CalendarSection {...section} kept={shop.calendar} />
        </div>
        <div>
          <FundingSection {...section} kept={shop.fundingPlans} currency={currency} today={desk.today} />
          <TurnaroundSection {...section} kept={shop.turnaround} />
        </div>
      </div>
      <div className="setup-columns">
        <SupportSection {...section} kept={shop.supportRanges} />
        <InspectionSection {...section} kept={shop.inspection} today={desk.today} />
      </div>
      <div className="setup-columns">
        <CodeKindsSection {...section} kept={shop.codeKinds} />
        <div>
          <FilingSection {...section} kept={shop.filingRules} />
          <CodesAfterSaleSection {...section} kept={shop.daysUntilCodesAreDestroyed} />
        </div>
      </div>
      <div className="setup-columns">
        <SignInSection {...section} kept={shop.signIn} managerHasSecret={desk.signIn.managerHasSecret} />
        <div>
          <SecretsSection desk={desk} />
          <OwnSecretSection desk={desk} />
        </div>
      </div>
      <VaultSection desk={desk} />
      <div className="setup-columns">
        <FleetsSection desk={desk} />
        <ArchiveSection />
      </div>
      <RulePackSection {...section} kept={shop.rulePacks} today={desk.today} />
    </>
  );
}

export function SetupScreen() {
  const desk = useDesk();
  return (
    <div className="setup">
      <h1>{setupText.title}</h1>
      <ScreenPurpose screen="setup" />
      {desk.person.role === 'manager' && (
        <p className="setup-hint">
          {setupText.safetyHint}{' '}
          <Button kind="quiet" onPress={() => goTo({ screen: 'safety' })}>
            {setupText.safety}
          </Button>
        </p>
      )}
      {desk.person.role === 'manager' ? <Sections desk={desk} /> : <ForEverybody desk={desk} />}
    </div>
  );
}
