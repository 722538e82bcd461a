// Which fleet is open at this desk: another folder, the invented sample and back, and beginning the sample again.
import type { Desk } from '../../../app/contract/views.ts';
import { chooseFleet, openSample } from '../../state/other-fleet.ts';
import { sampleText as text } from '../../text/sample.ts';
import { Button } from '../../ui/button.tsx';
import { SampleWays } from '../../ui/sample-ways.tsx';
import { SectionHead } from '../../ui/section-head.tsx';

export function FleetsSection({ desk }: { readonly desk: Desk }) {
  const { isOwnCopy, canOpen } = desk.sample;
  return (
    <section className="setup-section" aria-labelledby="setup-fleets">
      <SectionHead id="setup-fleets" title={text.section} />
      <p className="setup-hint">{isOwnCopy ? text.hintSample : text.hintOwn}</p>
      <div className="setup-buttons">
        {isOwnCopy ? (
          <SampleWays desk={desk} kind="plain" />
        ) : (
          <>
            <Button tip={text.otherFleetTip} onPress={() => void chooseFleet()}>
              {text.otherFleet}
            </Button>
            {canOpen && (
              <Button tip={text.openSampleTip} onPress={() => void openSample()}>
                {text.openSample}
              </Button>
            )}
          </>
        )}
      </div>
    </section>
  );
}
