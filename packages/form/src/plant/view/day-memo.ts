import type { Plant, PlantDay } from '@unitbook/engine';
import type { DayViews } from './day-views.ts';

/** Makes the views of days, as `dayViews` does. */
export type MakeDayViews = (days: readonly PlantDay[], plant: Plant) => DayViews;

/**
 * Holds what some years of days showed: to look through them takes longer than a keystroke may. They are
 * looked through again when what they hang on has changed, and while somebody types, once the field is left.
 */
export class DayMemo {
  /** Whether what is held is of something that was typed over since. */
  isStale = false;
  private key: readonly unknown[] = [];
  private held: DayViews | null = null;
  private readonly make: MakeDayViews;

  constructor(make: MakeDayViews) {
    this.make = make;
  }

  /**
   * The maker of views for one drawing.
   *
   * @param key       everything that the views hang on: compared one by one, by identity
   * @param isTyping  whether a field is being typed in
   */
  maker(key: readonly unknown[], isTyping: boolean): MakeDayViews {
    return (days, plant) => {
      const isSame = key.length === this.key.length && key.every((one, at) => one === this.key[at]);
      this.isStale = !isSame && isTyping && this.held !== null;
      if (this.held !== null && (isSame || this.isStale)) return this.held;
      this.key = key;
      this.held = this.make(days, plant);
      return this.held;
    };
  }

  /** Forget what is held: other days were opened. */
  clear(): void {
    this.held = null;
    this.isStale = false;
  }
}
