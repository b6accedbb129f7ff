import axe from 'axe-core';

/** Success criteria of WCAG 2.2, levels A and AA, as far as a program can check them. */
const CRITERIA = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What of a page fails them; none when it is as it should be. */
export async function findingsIn(host: HTMLElement): Promise<string[]> {
  const { violations } = await axe.run(host, { runOnly: CRITERIA });
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html}: ${failureSummary}`),
  );
}
