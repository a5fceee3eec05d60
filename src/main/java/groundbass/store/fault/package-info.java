/** What can be wrong with what holds a site's rows and files, each a type of its own. Knows neither database nor folder. */
package groundbass.store.fault;
