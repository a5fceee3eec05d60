-- What a lesson is found by, read off the release that readers get: facts of its main line, and the words of its title,
-- summary, notes and walkthrough, in small letters without accents, each once, a space before and after each. Portable:
-- H2 and PostgreSQL run the same text.
create table lesson_traits (
    episode_id varchar(16) not null primary key references episode (id) on delete cascade,
    release_id varchar(16) not null, -- by value: when another is out, the row is read anew
    techniques varchar(400) not null, -- the plucking hand's, by line text's words, a space before and after each
    key_name   varchar(40) not null,
    meter      varchar(20) not null,
    tempo      integer     not null, -- beats a minute
    strings    integer     not null,
    words      text        not null
);
create index lesson_traits_of_release on lesson_traits (release_id);
