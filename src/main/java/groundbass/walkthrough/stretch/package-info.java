/** What one voice does in a stretch of a bar, as it is counted and played. Knows neither the bar's other words nor other bars. */
package groundbass.walkthrough.stretch;
