/** Of rows kept: about three thousand frames in full at a width of 1280 px. */
const MOST_BYTES = 16 * 2 ** 20;

/**
 * Rows of a streak image by frame. Of a long film only every second, fourth … row is kept; `get` gives the row of the
 * frame or of the last one kept before it.
 */
export class KeptRows extends Map<number, Float32Array> {
  /** Of so many frames one row is kept. */
  step = 1;

  /** From rows as they were kept; the same object where it is one of these already. */
  static of(rows: ReadonlyMap<number, Float32Array>): KeptRows {
    if (rows instanceof KeptRows) return rows;
    const [first = 0, second = first + 1] = [...rows.keys()].slice(0, 2);
    return KeptRows.every(Math.max(1, second - first), rows);
  }

  private static every(step: number, rows: ReadonlyMap<number, Float32Array>): KeptRows {
    const some = new KeptRows();
    some.step = step;
    for (const [frame, row] of rows) some.set(frame, row);
    return some;
  }

  override get(frame: number): Float32Array | undefined {
    return super.get(frame - (frame % this.step));
  }

  override set(frame: number, row: Float32Array): this {
    return frame % this.step === 0 ? super.set(frame, row) : this;
  }

  /** These rows, or another object with every second where they have become too many. */
  bounded(mostBytes = MOST_BYTES): KeptRows {
    const rowBytes = this.values().next().value?.byteLength ?? 0;
    if (this.size * rowBytes <= mostBytes) return this;
    return KeptRows.every(2 * this.step, this).bounded(mostBytes);
  }
}
