"""What is held beside the tool: a native decoder piping grey frames into background subtraction and moments.

native.py CLIP WIDTH HEIGHT BITS: prints frames read, frames in which something moved, and the last place it was.
"""
import subprocess
import sys

import cv2
import numpy as np

clip, width, height, bits = sys.argv[1], *map(int, sys.argv[2:5])
kind = np.uint8 if bits == 8 else np.uint16
scale = 1 if bits == 8 else 257
frame_bytes = width * height * np.dtype(kind).itemsize
decoder = subprocess.Popen(
    ['ffmpeg', '-v', 'error', '-i', clip, '-f', 'rawvideo',
     '-pix_fmt', 'gray' if bits == 8 else 'gray16le', '-'],
    stdout=subprocess.PIPE, bufsize=8 * frame_bytes)
first, background, moved, place, frames = [], None, 0, None, 0
while len(data := decoder.stdout.read(frame_bytes)) == frame_bytes:
    frame = np.frombuffer(data, kind).reshape(height, width)
    frames += 1
    if background is None:
        first.append(frame)
        if len(first) == 25:
            background = np.median(first, axis=0).astype(kind)
        continue
    changed = cv2.threshold(cv2.absdiff(frame, background), 25 * scale, 255, cv2.THRESH_BINARY)[1]
    moments = cv2.moments(changed.astype(np.uint8, copy=False), True)
    if moments['m00'] > 50:
        moved += 1
        place = (moments['m10'] / moments['m00'], moments['m01'] / moments['m00'])
if decoder.wait() != 0:
    sys.exit('the decoder failed')
print(frames, moved, place)
