import { describe, expect, it } from 'vitest';
import { greyPlan } from '../../../src/footage/ffmpeg/grey';

describe('grey values from pixel formats', () => {
  it.each([
    ['yuv420p', 'extractplanes=y,format=gray', 8],
    ['yuvj422p', 'extractplanes=y,format=gray', 8],
    ['yuv422p10le', 'extractplanes=y,format=gray10le', 10],
    ['yuva444p12le', 'extractplanes=y,format=gray12le', 12],
    ['gray', 'format=gray', 8],
    ['gray16be', 'format=gray16le', 16],
    ['ya16be', 'extractplanes=y,format=gray16le', 16],
    ['yuyv422', 'format=yuv422p,extractplanes=y,format=gray', 8],
    ['p010le', 'format=yuv420p10le,extractplanes=y,format=gray10le', 10],
    ['rgb24', 'format=gray', 8],
    ['bgra', 'format=gray', 8],
    ['pal8', 'format=gray', 8],
    ['rgb48be', 'format=gray16le', 16],
    ['gbrp12le', 'format=gray12le', 12],
  ])('%s', (format, filter, bitDepth) => {
    const bytesPerSample = bitDepth > 8 ? 2 : 1;
    const isCoded = !/^(rgb|bgr|pal|gbr)/.test(format);
    expect(greyPlan(format)).toEqual({ filter, bitDepth, bytesPerSample, isCoded });
  });

  it('has none for floating point or a format not found out', () => {
    expect(['grayf32le', 'gbrpf32le', 'unknown'].map(greyPlan)).toEqual([null, null, null]);
  });
});
