import { render } from 'preact';
import { useState } from 'preact/hooks';
import { afterEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { Estimate } from '../../../src/core/estimate';
import { EstimateField } from '../../../src/ui/fields/EstimateField';
import { QuantityField } from '../../../src/ui/fields/QuantityField';
import { RULES } from '../../../src/ui/fields/rules';

const host = document.createElement('div');
document.body.append(host);
afterEach(() => render(null, host));

function Rate({ onCommit }: { onCommit(value: number | null): void }) {
  const [value, setValue] = useState<number | null>(null);
  return (
    <QuantityField
      label="Recording rate"
      rule={RULES.recordingRate}
      value={value}
      onCommit={(next) => {
        onCommit(next);
        setValue(next);
      }}
    />
  );
}

describe('a typed quantity', () => {
  const field = () => page.getByLabelText('Recording rate');
  const setUp = () => {
    const committed: (number | null)[] = [];
    render(<Rate onCommit={(value) => committed.push(value)} />, host);
    return committed;
  };

  it('is taken over on Enter and shown with its unit', async () => {
    const committed = setUp();
    await field().fill('12 kHz');
    await userEvent.keyboard('{Enter}');
    expect(committed).toEqual([12000]);
    await expect.element(field()).toHaveValue('12000 /s');
  });

  it.each([
    ['0', 'must be greater than 0'],
    ['-12000', 'must be greater than 0'],
    ['fast', 'is not a number'],
    ['3e8', 'must be between 1 /s and 10000000 /s'],
  ])('says while it is typed what is wrong with %s, and keeps the text', async (text, message) => {
    const committed = setUp();
    await field().fill(text);
    await expect.element(page.getByRole('alert')).toHaveTextContent(message);
    await expect.element(field()).toHaveAttribute('aria-invalid', 'true');
    await userEvent.keyboard('{Enter}');
    await userEvent.tab();
    expect(committed).toEqual([]);
    await expect.element(field()).toHaveValue(text);
  });

  it('goes back on Escape', async () => {
    setUp();
    await field().fill('12000');
    await userEvent.keyboard('{Enter}');
    await field().fill('13');
    await userEvent.keyboard('{Escape}');
    await expect.element(field()).toHaveValue('12000 /s');
  });
});

describe('a value with its uncertainty', () => {
  it('starts from a proposed uncertainty that can be typed over', async () => {
    const committed: (Estimate | null)[] = [];
    function Exposure() {
      const [value, setValue] = useState<Estimate | null>(null);
      return (
        <EstimateField
          label="Exposure"
          rule={RULES.exposure}
          value={value}
          optional
          firstU={(exposure) => exposure * 0.05}
          onCommit={(next) => {
            committed.push(next);
            setValue(next);
          }}
        />
      );
    }
    render(<Exposure />, host);
    await page.getByLabelText('Exposure').fill('1/50000 s');
    await userEvent.keyboard('{Enter}');
    expect(committed.at(-1)?.value).toBeCloseTo(2e-5, 12);
    expect(committed.at(-1)?.u).toBeCloseTo(1e-6, 12);
    await page.getByLabelText('± u').fill('2 us');
    await userEvent.keyboard('{Enter}');
    expect(committed.at(-1)?.u).toBeCloseTo(2e-6, 12);
    await page.getByLabelText('Exposure').fill('');
    await userEvent.keyboard('{Enter}');
    expect(committed.at(-1)).toBeNull();
  });
});
