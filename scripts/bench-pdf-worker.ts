/** One core's share of the benchmark. */
import { parentPort, workerData } from 'node:worker_threads';
import { bench } from './bench-pdf.ts';

parentPort?.postMessage(await bench(Number(workerData)));
