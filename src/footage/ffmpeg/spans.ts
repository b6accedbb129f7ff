/** Grey bytes decoded in one go: bounds memory, and how long a cancel waits. */
export const BYTES_A_SPAN = 32 << 20;
/** The same where several are decoded at once. */
export const BYTES_A_SPAN_APART = 8 << 20;

/** The same of uncompressed film: there is nothing to decode that would make up for starting late or for the memory. */
export const BYTES_A_SPAN_RAW = 2 << 20;

/** Lets the messages that wait be handled (a cancel among them): decoding blocks the thread. */
export const messagesHandled = () => new Promise<void>((resolve) => setTimeout(resolve, 0));
