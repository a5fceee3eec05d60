/** What a lesson says beside its line. Knows nothing of the line but what is read off it. */
package groundbass.web.desk.facts;
