import { TopBar } from '../frame/top-bar.tsx';
import { TextInput } from '../forms/text-input.tsx';
import { texts } from '../texts/index.ts';
import { Caution } from '../cautions/caution.tsx';
import { AirFields, SupplyFields, MaterialField, RequirementFields, ExhaustField } from './shop-fields.tsx';

/** The place, its air, its mains, what is carried, and how sure the answer must be. */
export function ShopPage() {
  const t = texts.value.shop;
  return (
    <div class="narrow">
      <TopBar title={t.title} back={{ page: 'match' }} />
      <TextInput path="/name" label={t.name} note="name" />
      <section class="part">
        <h2>{t.air}</h2>
        <AirFields />
      </section>
      <section class="part">
        <h2>{t.mains}</h2>
        <SupplyFields />
        <Caution name="mains" />
      </section>
      <section class="part">
        <h2>{t.carries}</h2>
        <MaterialField />
        <ExhaustField />
      </section>
      <section class="part">
        <h2>{t.howSure}</h2>
        <RequirementFields />
      </section>
    </div>
  );
}
