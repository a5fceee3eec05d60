package groundbass.audience.statistics;

/** How much of a series was taken in one hour of the week, as clocks in its zone show it; Monday is 1 (ISO 8601). */
public record HourUse(int weekday, int localHour, long downloads) {}
