/** The short text of each event on the page, for who hears the page instead of seeing it. */
package groundbass.walkthrough.event;
