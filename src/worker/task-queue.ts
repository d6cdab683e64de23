/** What the worker is still to do: the most urgent first, and of those the one that came first. */
import type { Priority } from '../protocol/run-signals';

export interface Task {
  /** 0 for what nobody has asked for. */
  readonly id: number;
  readonly priority: Priority;
  /** Whether it was interrupted for something more urgent: that happens once. */
  gaveWay: boolean;
  run(): void;
}

export class TaskQueue {
  private readonly tasks: Task[] = [];

  add(task: Task): void {
    const place = this.tasks.findIndex(({ priority }) => priority > task.priority);
    this.tasks.splice(place < 0 ? this.tasks.length : place, 0, task);
  }

  /** Before all others that are as urgent. */
  addAgain(task: Task): void {
    const place = this.tasks.findIndex(({ priority }) => priority >= task.priority);
    this.tasks.splice(place < 0 ? this.tasks.length : place, 0, task);
  }

  get size(): number {
    return this.tasks.length;
  }

  next(): Task | undefined {
    return this.tasks.shift();
  }

  /** @returns whether it was waiting */
  remove(id: number): boolean {
    const place = this.tasks.findIndex((task) => task.id === id);
    if (place >= 0) this.tasks.splice(place, 1);
    return place >= 0;
  }
}
