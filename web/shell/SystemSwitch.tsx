import { Label, Radio, RadioGroup } from 'react-aria-components/RadioGroup';
import { useShop, useShopChange } from '#web/api/queries.ts';

/** One switch for every figure on every screen; what people typed stays as they typed it. */
export function SystemSwitch() {
  const shop = useShop();
  const { change } = useShopChange();
  return (
    <RadioGroup
      className="system-switch"
      value={shop.system}
      onChange={(system) => change({ system: system === 'metric' ? 'metric' : 'us' })}
      orientation="horizontal"
    >
      <Label className="unseen">Units</Label>
      <Radio value="us">US</Radio>
      <Radio value="metric">Metric</Radio>
    </RadioGroup>
  );
}
