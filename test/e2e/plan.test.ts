import { expect, it } from 'vitest';
import { foreign, openTool } from './tool';

it('plans a shot without footage, by keyboard, and compares other settings', async () => {
  await using tool = await openTool();
  const { page } = tool;
  await page.getByRole('button', { name: 'Plan a shot' }).focus();
  await page.keyboard.press('Enter');
  await page.getByText('The exit velocity should come out to').waitFor();
  await page.getByLabel('Frame rate').fill('900');
  await page.keyboard.press('Enter');
  await page.getByText('leaves the view within').waitFor();
  await page.getByLabel('Frame rate').fill('12000');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Compare rates and fields of view' }).focus();
  await page.keyboard.press('Enter');
  await page.getByText('Least uncertain:').waitFor();
  expect(tool.requests.some((url) => url.includes('plan.worker'))).toBe(true);
  expect(foreign(tool)).toEqual([]);
  expect(tool.errors).toEqual([]);
});
