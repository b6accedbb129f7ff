export function judgeAudit(text: string): {
  readonly outcome: 'passed' | 'failed' | 'not reached';
  readonly lines: readonly string[];
};
