// The ways on from the open sample: back to the fleet of one's own or to beginning one, and beginning the sample again. One set of
// buttons for the line over the lot and for Setup.
import type { Desk } from '../../app/contract/views.ts';
import { askToBeginAgain, chooseFleet, leaveSample } from '../state/other-fleet.ts';
import { sampleText as text } from '../text/sample.ts';
import { Button } from './button.tsx';

export function SampleWays({ desk, kind }: { readonly desk: Desk; readonly kind: 'plain' | 'quiet' }) {
  const { wayBack } = desk.sample;
  return (
    <>
      {wayBack === null ? (
        <Button kind={kind} tip={text.beginTip} onPress={() => void chooseFleet()}>
          {text.begin}
        </Button>
      ) : (
        <Button kind={kind} onPress={() => void leaveSample()}>
          {text.wayBack(wayBack)}
        </Button>
      )}
      <Button
        kind={kind}
        isDisabled={desk.readOnlyReason !== null}
        whyDisabled={desk.readOnlyReason ?? undefined}
        onPress={askToBeginAgain}
      >
        {text.throwAway}
      </Button>
    </>
  );
}
