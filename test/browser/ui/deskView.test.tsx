import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { PLACES } from '../../../src/ui/desk';
import { showView, viewOf } from '../../../src/ui/deskView';
import { type MountedPage, mountPage } from './mountPage';

let mounted: MountedPage;
beforeEach(async () => {
  mounted = await mountPage();
});
afterEach(() => mounted.unmount());

describe('a desk that was left', () => {
  it.each(PLACES)('is laid out at the same place: %s', (place) => {
    const { desk } = mounted;
    desk.place.value = place;
    const kept = structuredClone(viewOf(desk));
    desk.place.value = place === 'shot' ? 'plan' : 'shot';
    showView(desk, kept);
    expect(desk.place.value).toBe(place);
  });

  it('stays where it is if the place kept is none any more', () => {
    const { desk } = mounted;
    desk.place.value = 'report';
    showView(desk, { ...viewOf(desk), place: 'cellar' });
    expect(desk.place.value).toBe('report');
  });
});
