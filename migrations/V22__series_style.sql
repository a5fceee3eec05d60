-- How a series has its sheets, in columns of its own; a series without a row has them as usual. Until now these stood among
-- the site's settings, as "letters.<series>" and its kin. Portable: H2 and PostgreSQL run the same text.
create table series_style (
    series_id      varchar(16)   not null primary key references series (id) on delete cascade,
    letters        varchar(4000) not null, -- as slap=S pop=P; what is not among them is as usual
    simile         boolean       not null,
    rests_together boolean       not null,
    paper          varchar(10)   not null,
    counts         varchar(10)   not null,
    every_bar      boolean       not null
);

insert into series_style (series_id, letters, simile, rests_together, paper, counts, every_bar)
select series.id,
       coalesce((select chosen from setting where name = 'letters.' || series.id), ''),
       exists (select 1 from setting where name = 'abbreviations.' || series.id and chosen like '%simile%'),
       exists (select 1 from setting where name = 'abbreviations.' || series.id and chosen like '%rests%'),
       case when exists (select 1 from setting where name = 'paper.' || series.id and chosen = 'letter')
            then 'letter' else 'a4' end,
       case when exists (select 1 from setting where name = 'aids.' || series.id and chosen like '%counts-all%') then 'all'
            when exists (select 1 from setting where name = 'aids.' || series.id and chosen like '%counts-none%') then 'none'
            else 'exercises' end,
       exists (select 1 from setting where name = 'aids.' || series.id and chosen like '%numbers%')
  from series
 where exists (select 1 from setting
                where name in ('letters.' || series.id, 'abbreviations.' || series.id, 'paper.' || series.id, 'aids.' || series.id));

delete from setting
 where name like 'letters.%' or name like 'abbreviations.%' or name like 'paper.%' or name like 'aids.%';
