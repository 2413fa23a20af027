import { Icon } from '../drawings/icons.tsx';
import { TopBar } from '../frame/top-bar.tsx';
import { TextInput } from '../forms/text-input.tsx';
import { go } from '../state/route.ts';
import { texts } from '../texts/index.ts';
import { AirFields, ExhaustField, MaterialField, SupplyFields } from '../shop/shop-fields.tsx';
import { WheelChoice } from '../blowers/wheel-choice.tsx';
import { FirstMachine } from './first-machine.tsx';

/**
 * A new job in a few short steps. Everything may stay empty; each step works on the job itself and stands in the address,
 * so a reload goes on where it was.
 */
export function NewJobPage({ step }: { step: number }) {
  const t = texts.value.newJob;
  const steps = [
    { title: t.steps.shop, body: <ShopStep /> },
    { title: t.steps.mains, body: <SupplyFields /> },
    { title: t.steps.machine, body: <FirstMachine /> },
    { title: t.steps.blower, body: <WheelChoice onChosen={(blowerId) => go({ page: 'blower', blowerId })} /> },
  ];
  const here = Math.min(step, steps.length - 1);
  const now = steps[here];
  const last = here === steps.length - 1;
  return (
    <div class="narrow">
      <TopBar
        title={t.title}
        small={t.stepOf(String(here + 1), String(steps.length))}
        back={here > 0 ? { page: 'new-job', step: here - 1 } : { page: 'jobs' }}
      />
      <ol class="step-pegs" aria-hidden="true">
        {steps.map(({ title }, index) => (
          <li key={title} class={index <= here ? 'done' : ''} />
        ))}
      </ol>
      <section class="part">
        <h2>{now?.title}</h2>
        {now?.body}
      </section>
      {!last && (
        <>
          <button type="button" class="box fill next go-on" onClick={() => go({ page: 'new-job', step: here + 1 })}>
            {t.next} <Icon name="on" />
          </button>
          <p class="second">{t.mayStayEmpty}</p>
        </>
      )}
    </div>
  );
}

function ShopStep() {
  return (
    <>
      <TextInput path="/name" label={texts.value.shop.name} note="name" />
      <MaterialField />
      <AirFields />
      <ExhaustField />
    </>
  );
}
