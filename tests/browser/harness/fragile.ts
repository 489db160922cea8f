/* The storage worker, and a way to break it. */
import '../../../renderer/storage/worker.ts';

addEventListener('message', ({ data }) => {
  if (data === 'break') {
    setTimeout(() => {
      throw new Error('broken on purpose');
    });
  }
});
