/* The storage worker in an older browser. */
import './noHeldFiles.ts';
import '../../../renderer/storage/worker.ts';
