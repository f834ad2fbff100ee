//! The three demo bodies.
#![allow(clippy::unwrap_used, reason = "what cannot be read fails the test")]

use breeks::body::Body;
use breeks::order::{DEMOS, Order, demo};
use breeks::terms::{Measurement, Word};

#[test]
fn demo_bodies_without_a_mistake() {
    for name in DEMOS {
        let source = demo(name).unwrap();
        let (order, notices) = Order::read(&source).map_err(|e| println!("{e}")).unwrap();
        assert!(notices.is_empty(), "{notices:?}");
        let (body, notices) = Body::resolve(&order.body).map_err(|e| println!("{e}")).unwrap();
        assert!(notices.is_empty(), "{notices:?}");
        println!("{name}");
        for m in Measurement::ALL {
            if let Some(v) = body.value(*m) {
                println!("  {:20} {:7.2} {:9} {:.2}", m.key(), v.cm, v.from.key(), v.sd);
            }
        }
    }
}

#[test]
fn unit_of_the_cox_in_inches() {
    let (order, _) = Order::read(&demo("cox").unwrap()).unwrap();
    assert_eq!(order.body.cm(Measurement::HipGirth), Some(101.6));
}
