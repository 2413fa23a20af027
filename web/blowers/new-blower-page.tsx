import { TopBar } from '../frame/top-bar.tsx';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { WheelChoice } from './wheel-choice.tsx';

/** Another find: its wheel and plate first, everything else on its own page. */
export function NewBlowerPage() {
  return (
    <div class="narrow">
      <TopBar title={texts.value.blowers.add} back={{ page: 'blowers' }} />
      <WheelChoice onChosen={(blowerId) => go({ page: 'blower', blowerId }, 'replace')} />
    </div>
  );
}
