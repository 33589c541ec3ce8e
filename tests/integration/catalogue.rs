//! catalogue
use tureen::catalogue::Catalogue;
#[test]
fn loads() {
    let t = std::time::Instant::now();
    let c = Catalogue::load().unwrap_or_else(|e| panic!("{e}"));
    eprintln!("{:?}", t.elapsed());
    assert_eq!(c.names().count(), 51);
    for n in c.names() {
        for (f, s) in c.entry(n).unwrap().sources() {
            println!("{n} {f} {s}");
        }
    }
}
